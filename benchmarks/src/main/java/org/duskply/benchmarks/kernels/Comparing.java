package org.duskply.benchmarks.kernels;

import org.duskply.engine.blend.BlendKernel;
import org.duskply.engine.blend.Blends;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.testing.reference.PopFormulas;
import org.duskply.recipe.NamedSpace;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/** A pop by luminance: the brighter of two colours as a whole, chunk by chunk in cache. */
@OperationsPerInvocation(Fused.PIXELS)
public class Comparing extends Megapixels {
  @Param("VIEW")
  public Content content = Content.VIEW;

  private final double[] weights = ColourSpace.of(NamedSpace.SRGB).luminance();
  private final BlendKernel kernel = Blends.brighter(weights);
  private float[][] below = new float[3][0];
  private float[][] frame = new float[3][0];
  private final float[][] out = new float[3][Fused.PIXELS];

  @Setup
  public void prepare() {
    below = content.picture(Fused.PIXELS, 0);
    frame = content.picture(Fused.PIXELS, 1);
    brighter();
    for (int i = 0; i < Fused.PIXELS; i++) {
      double[] want = PopFormulas.brighter(weights, Fused.pixel(below, i), Fused.pixel(frame, i));
      Answers.near("brighter", i, out, want);
    }
  }

  @Benchmark
  public float[][] brighter() {
    for (int from = 0; from < Fused.PIXELS; from += Fused.CHUNK) {
      kernel.run(below, frame, out, from, from + Fused.CHUNK);
    }
    return out;
  }
}
