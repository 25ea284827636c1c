package org.duskply.engine.plan;

import java.util.List;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/**
 * A fused run: a point node and all point nodes that it is made of, down to frames and finished
 * stages, as instructions that work through a chunk of pixels row by row while it is warm in cache.
 * A step's instructions run only on the pixels that its mask shows. Immutable.
 */
public final class Program {
  private final List<FrameNode> frames;
  private final List<Node> stages;
  private final List<Instruction> instructions;
  private final int[] registerPlanes;
  private final int result;

  Program(
      List<FrameNode> frames,
      List<Node> stages,
      List<Instruction> instructions,
      int[] registerPlanes,
      int result) {
    this.frames = List.copyOf(frames);
    this.stages = List.copyOf(stages);
    this.instructions = List.copyOf(instructions);
    this.registerPlanes = registerPlanes.clone();
    this.result = result;
  }

  /** The frames it reads as native samples, each once. */
  public List<FrameNode> frames() {
    return frames;
  }

  /** The nodes it reads as finished stages, each once. */
  public List<Node> stages() {
    return stages;
  }

  /** Bytes of registers that a running program takes. */
  public long scratchBytes(int chunkWidth) {
    long floats = chunkWidth;
    for (int planes : registerPlanes) {
      floats += (long) planes * chunkWidth;
    }
    return floats * Float.BYTES;
  }

  /**
   * Computes all of {@code out}.
   *
   * @param chunkWidth pixels of a row that are carried through the whole program before the next
   * @param stop asked before each chunk
   */
  public void run(Leaves leaves, Planes out, int chunkWidth, Stop stop) {
    Region area = out.area();
    RowState state = new RowState(frames, registerPlanes, chunkWidth, leaves);
    for (int left = area.left(); left < area.right(); left += chunkWidth) {
      stop.check();
      int width = Math.min(chunkWidth, area.right() - left);
      for (int y = area.top(); y < area.bottom(); y++) {
        state.moveTo(left, y);
        for (Instruction instruction : instructions) {
          instruction.run(state, 0, width);
        }
        for (int p = 0; p < out.count(); p++) {
          System.arraycopy(state.register(result)[p], 0, out.plane(p), out.at(left, y), width);
        }
      }
    }
  }

  /** Reports what is read to compute {@code out}. */
  void needs(Region out, LeafNeeds needs) {
    for (Instruction instruction : instructions) {
      instruction.needs(out, needs);
    }
  }
}
