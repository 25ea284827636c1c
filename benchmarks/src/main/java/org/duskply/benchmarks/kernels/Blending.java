package org.duskply.benchmarks.kernels;

import org.duskply.engine.blend.BlendKernel;
import org.duskply.engine.blend.Blends;
import org.duskply.engine.testing.reference.BlendFormulas;
import org.duskply.recipe.step.Blend;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/** Every blend mode, chunk by chunk in cache. */
@OperationsPerInvocation(Fused.PIXELS)
public class Blending extends Megapixels {
  @Param public Blend mode = Blend.NORMAL;

  @Param("VIEW")
  public Content content = Content.VIEW;

  private BlendKernel kernel = Blends.of(mode);
  private float[][] below = new float[3][0];
  private float[][] frame = new float[3][0];
  private final float[][] out = new float[3][Fused.PIXELS];

  @Setup
  public void prepare() {
    kernel = Blends.of(mode);
    below = content.picture(Fused.PIXELS, 0);
    frame = content.picture(Fused.PIXELS, 1);
    blend();
    for (int i = 0; i < Fused.PIXELS; i++) {
      double[] want = BlendFormulas.of(mode, Fused.pixel(below, i), Fused.pixel(frame, i));
      Answers.near(mode, i, out, want);
    }
  }

  @Benchmark
  public float[][] blend() {
    for (int from = 0; from < Fused.PIXELS; from += Fused.CHUNK) {
      kernel.run(below, frame, out, from, from + Fused.CHUNK);
    }
    return out;
  }
}
