package org.duskply.benchmarks.kernels;

import org.duskply.engine.adjust.AdjustKernel;
import org.duskply.engine.adjust.Adjustments;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.recipe.NamedSpace;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/**
 * Every adjustment, chunk by chunk in cache. As in the engine, a chunk is copied first and then
 * changed in place.
 */
@OperationsPerInvocation(Fused.PIXELS)
public class Adjusting extends Megapixels {
  static final ColourSpace SPACE = ColourSpace.of(NamedSpace.SRGB);

  @Param public Treatment treatment = Treatment.EXPOSURE;

  @Param("VIEW")
  public Content content = Content.VIEW;

  private AdjustKernel kernel = Adjustments.prepare(treatment.adjustments(), SPACE);
  private float[][] in = new float[3][0];
  private final float[][] out = new float[3][Fused.PIXELS];

  @Setup
  public void prepare() {
    kernel = Adjustments.prepare(treatment.adjustments(), SPACE);
    in = content.picture(Fused.PIXELS, 0);
    adjust();
    for (int i = 0; i < Fused.PIXELS; i++) {
      Answers.near(treatment, i, out, treatment.formula().of(Fused.pixel(in, i)));
    }
  }

  @Benchmark
  public float[][] adjust() {
    for (int from = 0; from < Fused.PIXELS; from += Fused.CHUNK) {
      for (int p = 0; p < 3; p++) {
        System.arraycopy(in[p], from, out[p], from, Fused.CHUNK);
      }
      kernel.run(out[0], out[1], out[2], from, from + Fused.CHUNK);
    }
    return out;
  }
}
