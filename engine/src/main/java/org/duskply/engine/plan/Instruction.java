package org.duskply.engine.plan;

import java.util.List;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.pixel.Runs;
import org.jspecify.annotations.Nullable;

/**
 * One thing that a {@link Program} does to a span of a row. Registers are rows of floats, one set
 * of planes each; every instruction writes one register.
 */
sealed interface Instruction {

  /**
   * Runs the instruction on indices {@code from} up to {@code to} of the row that {@code state}
   * stands on.
   */
  void run(RowState state, int from, int to);

  /** Reports what is read of frames and stages to run the instruction over {@code out}. */
  void needs(Region out, LeafNeeds needs);

  /**
   * Reads a frame's samples into linear light.
   *
   * @param to register written
   * @param leaf which of the program's frames
   */
  record LoadFrame(int to, int leaf) implements Instruction {
    @Override
    public void run(RowState state, int from, int to) {
      state.loadFrame(leaf, this.to, from, to);
    }

    @Override
    public void needs(Region out, LeafNeeds needs) {
      needs.frame(leaf, out);
    }
  }

  /**
   * Copies a finished stage.
   *
   * @param to register written
   * @param leaf which of the program's stages
   * @param node the stage's node; 0 outside its footprint if it is a mask
   */
  record LoadStage(int to, int leaf, Node node) implements Instruction {
    @Override
    public void run(RowState state, int from, int to) {
      state.loadStage(leaf, this.to, from, to);
    }

    @Override
    public void needs(Region out, LeafNeeds needs) {
      needs.stage(leaf, node.planes() == 1 ? node.footprint(out) : out);
    }
  }

  /**
   * Runs a point node.
   *
   * @param node the node
   * @param in registers of its inputs
   * @param to register written; may be that of the first input
   */
  record Apply(PointNode node, int[] in, int to) implements Instruction {
    @Override
    public void run(RowState state, int from, int to) {
      float[][][] inputs = new float[in.length][][];
      for (int i = 0; i < in.length; i++) {
        inputs[i] = state.register(in[i]);
      }
      node.row(inputs, state.register(this.to), state.left(), state.row(), from, to);
    }

    @Override
    public void needs(Region out, LeafNeeds needs) {}
  }

  /**
   * Mixes a step into the picture below where its mask shows, and runs the step there alone.
   *
   * @param mix the equation's parameters
   * @param below register of the picture below
   * @param to register written; may be {@code below}
   * @param maskLeaf which of the program's stages is the mask; −1: everywhere
   * @param inner what makes the step
   * @param step register of the step, written by {@code inner}
   * @param coverage register of the frame whose plane 3 is coverage; −1: none
   */
  record MixSpans(
      Mix mix, int below, int to, int maskLeaf, List<Instruction> inner, int step, int coverage)
      implements Instruction {
    @Override
    public void run(RowState state, int from, int to) {
      if (this.to != below) {
        state.copy(below, this.to, from, to);
      }
      if (maskLeaf < 0) {
        span(state, from, to, Runs.Kind.FULL);
      } else {
        state.eachRun(maskLeaf, from, to, this);
      }
    }

    /**
     * Runs the step on one run of the mask and mixes it in. The mask's row is fetched after the
     * step has run, because masked steps inside it use the same room.
     */
    void span(RowState state, int from, int to, Runs.Kind kind) {
      for (Instruction instruction : inner) {
        instruction.run(state, from, to);
      }
      float @Nullable [] mask =
          kind == Runs.Kind.FULL ? null : state.maskValues(maskLeaf, from, to);
      float[][] source = state.register(step);
      float[][] target = state.register(this.to);
      float[] cover = coverage < 0 ? null : state.register(coverage)[3];
      for (int p = 0; p < 3; p++) {
        if (cover != null || kind == Runs.Kind.ANY) {
          Mix.mixed(source[p], mask, cover, mix.opacity(), target[p], from, to);
        } else if (mask != null) {
          Mix.between(source[p], mask, mix.opacity(), target[p], from, to);
        } else if (mix.opacity() == 1f) {
          System.arraycopy(source[p], from, target[p], from, to - from);
        } else if (mix.opacity() != 0f) {
          Mix.evenly(source[p], mix.opacity(), target[p], from, to);
        }
      }
    }

    @Override
    public void needs(Region out, LeafNeeds needs) {
      Region shown = mix.footprint(out);
      if (shown.empty()) {
        return;
      }
      if (maskLeaf >= 0) {
        needs.stage(maskLeaf, shown);
      }
      for (Instruction instruction : inner) {
        instruction.needs(shown, needs);
      }
    }
  }
}
