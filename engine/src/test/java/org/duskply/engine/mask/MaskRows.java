package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.plan.PointNode;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.render.RegionEvaluator;
import org.duskply.engine.testing.NoiseFrame;
import org.duskply.recipe.NamedSpace;

/** Masks made of rows and of frames of noise, for tests. */
final class MaskRows {
  static final ColourSpace SRGB = ColourSpace.of(NamedSpace.SRGB);

  private MaskRows() {}

  /** A frame of noise, with straight alpha where it has 4 channels. */
  static FrameNode frame(long seed, int width, int height, int channels) {
    return new NoiseFrame(seed, width, height, channels, 7, FrameSource.Access.RANDOM).node(0);
  }

  /** The values of a mask of one picture over a row of its pixels. */
  static float[] row(PointNode mask, float[]... planes) {
    float[] out = new float[planes[0].length];
    mask.row(new float[][][] {planes}, new float[][] {out}, 0, 0, 0, out.length);
    return out;
  }

  /** A rectangle of a node. */
  static Planes evaluate(Node node, Region region) {
    Plan plan = Plan.of(List.of(node), PlanSettings.DEFAULT);
    try (RegionEvaluator evaluator = new RegionEvaluator(plan, 1 << 22)) {
      return evaluator.compute(node, region, Stop.NEVER);
    }
  }
}
