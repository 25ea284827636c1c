package org.duskply.engine.plan;

import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.pixel.Runs;
import org.jspecify.annotations.Nullable;

/** A fused run of point nodes. */
final class FusedStage implements Stage {
  private static final double NANOS_A_PIXEL = 6;

  private final Node node;
  private final Program program;
  private final int chunkWidth;
  private final boolean leg;
  private final int[] frames;
  private final int[] stages;

  FusedStage(Node node, Program program, int chunkWidth, boolean leg, Index index) {
    this.node = node;
    this.program = program;
    this.chunkWidth = chunkWidth;
    this.leg = leg;
    this.frames = program.frames().stream().mapToInt(index::frame).toArray();
    this.stages = program.stages().stream().mapToInt(index::stage).toArray();
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public void needs(Region out, StageNeeds needs) {
    program.needs(
        out,
        new LeafNeeds() {
          @Override
          public void frame(int leaf, Region part) {
            needs.frame(frames[leaf], program.frames().get(leaf).stored(part));
          }

          @Override
          public void stage(int leaf, Region part) {
            needs.stage(stages[leaf], part);
          }
        });
  }

  @Override
  public void fill(StageInputs in, Planes out, Stop stop) {
    program.run(
        new Leaves() {
          @Override
          public Samples samples(int leaf, int y) {
            return in.samples(frames[leaf], y);
          }

          @Override
          public @Nullable Planes planes(int leaf, int y) {
            return in.planes(stages[leaf], y);
          }

          @Override
          public @Nullable Runs runs(int leaf, int y) {
            return in.runs(stages[leaf], y);
          }
        },
        out,
        chunkWidth,
        stop);
  }

  @Override
  public boolean passing() {
    return leg;
  }

  @Override
  public long scratchBytes(Region out) {
    return program.scratchBytes(chunkWidth);
  }

  @Override
  public double costNanos(Region out) {
    return NANOS_A_PIXEL * out.count();
  }
}
