package org.duskply.engine.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.duskply.engine.blend.Blends;
import org.duskply.engine.blend.SeparableKernel;
import org.duskply.engine.testing.reference.BlendFormulas;
import org.duskply.recipe.step.Blend;
import org.junit.jupiter.api.Test;

/** What the kernel of every blend mode that knows one channel at a time holds to. */
public abstract class BlendKernelContract {
  private static final float GUARD = -7.25f;

  /** The mode. */
  protected abstract Blend mode();

  /**
   * The bound on one result. Two roundings of 2⁻²⁴ of what is added up, which is at most the sum of
   * both sizes and their product.
   */
  protected double bound(double b, double s, double want) {
    return 0x1p-23 * (Math.abs(b) + Math.abs(s) + Math.abs(b * s));
  }

  private SeparableKernel kernel() {
    return (SeparableKernel) Blends.of(mode());
  }

  @Test
  void agreesWithTheFormula() {
    Lcg noise = new Lcg(11);
    check(noise.samples(5000, 0, 1), noise.samples(5000, 0, 1));
    check(noise.samples(5000, -0.5, 3), noise.samples(5000, -0.5, 3));
  }

  @Test
  void agreesWithTheFormulaAtEveryPairOfEdges() {
    float[] edges = Edges.values();
    for (float edge : edges) {
      float[] below = new float[edges.length];
      Arrays.fill(below, edge);
      check(below, edges);
    }
  }

  @Test
  void changesItsWindowOnlyAndMayWriteOverEitherPicture() {
    for (int size : new int[] {0, 1, 2, 7, 63, 65}) {
      for (int offset : new int[] {0, 1, 5}) {
        int length = offset + size + 3;
        float[] below = new Lcg(3).samples(length, -0.2, 1.5);
        float[] frame = new Lcg(4).samples(length, -0.2, 1.5);
        float[] out = new float[length];
        Arrays.fill(out, GUARD);
        kernel().run(below, frame, out, offset, offset + size);
        float[] overBelow = below.clone();
        kernel().run(overBelow, frame, overBelow, offset, offset + size);
        float[] overFrame = frame.clone();
        kernel().run(below, overFrame, overFrame, offset, offset + size);
        for (int i = 0; i < length; i++) {
          boolean in = i >= offset && i < offset + size;
          assertThat(out[i] == GUARD).isEqualTo(!in);
          assertThat(overBelow[i]).isEqualTo(in ? out[i] : below[i]);
          assertThat(overFrame[i]).isEqualTo(in ? out[i] : frame[i]);
        }
      }
    }
  }

  @Test
  void windowsMakeNoDifferenceToABit() {
    float[] below = new Lcg(5).samples(777, -0.5, 3);
    float[] frame = new Lcg(6).samples(777, -0.5, 3);
    float[] whole = new float[777];
    float[] parts = new float[777];
    kernel().run(below, frame, whole, 0, 777);
    for (int from = 0, step = 1; from < 777; from += step, step = 2 * step + 1) {
      kernel().run(below, frame, parts, from, Math.min(777, from + step));
    }
    assertThat(Bits.sha256(parts)).isEqualTo(Bits.sha256(whole));
  }

  @Test
  void doesAllThreeChannelsAlike() {
    float[][] below = {{0.25f, 2f}, {0.5f, -1f}, {0.75f, 1f}};
    float[][] frame = {{0.75f, 1f}, {0.5f, 0.3f}, {0.125f, 0f}};
    float[][] out = new float[3][2];
    kernel().run(below, frame, out, 0, 2);
    for (int p = 0; p < 3; p++) {
      float[] alone = new float[2];
      kernel().run(below[p], frame[p], alone, 0, 2);
      assertThat(out[p]).isEqualTo(alone);
    }
  }

  private void check(float[] below, float[] frame) {
    float[] out = new float[below.length];
    kernel().run(below, frame, out, 0, out.length);
    for (int i = 0; i < out.length; i++) {
      String what = mode().key() + " of " + below[i] + " and " + frame[i];
      double want = BlendFormulas.of(mode(), below[i], frame[i]);
      Close.within(what, out[i], want, bound(below[i], frame[i], want));
    }
  }
}
