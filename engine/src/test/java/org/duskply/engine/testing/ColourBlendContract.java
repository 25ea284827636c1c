package org.duskply.engine.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.duskply.engine.blend.BlendKernel;
import org.junit.jupiter.api.Test;

/** What the kernel of every blend that looks at all three channels at once holds to. */
public abstract class ColourBlendContract {
  private static final float GUARD = -7.25f;

  /** The kernel. */
  protected abstract BlendKernel kernel();

  /** The formula in double, above 1 and below 0 too. */
  protected abstract double[] formula(double[] below, double[] frame);

  /** The bound on each channel of one result. */
  protected abstract double bound(double[] below, double[] frame);

  /** The greatest size among the channels of both colours. */
  protected static double greatest(double[] below, double[] frame) {
    double most = 0;
    for (int p = 0; p < 3; p++) {
      most = Math.max(most, Math.max(Math.abs(below[p]), Math.abs(frame[p])));
    }
    return most;
  }

  @Test
  void agreesWithTheFormula() {
    Lcg noise = new Lcg(11);
    check(colours(noise, 5000, 0, 1), colours(noise, 5000, 0, 1));
    check(colours(noise, 5000, -0.5, 3), colours(noise, 5000, -0.5, 3));
    check(colours(noise, 5000, 0.4999, 0.5001), colours(noise, 5000, 0, 1));
    check(colours(noise, 5000, 0, 0.001), colours(noise, 5000, 0.7, 0.7001));
  }

  /** Each edge in each channel of either picture, and in all of them. */
  @Test
  void agreesWithTheFormulaAtEdges() {
    for (float a : Edges.values()) {
      for (float b : Edges.values()) {
        float[][] one = {{a, 0.5f, 0.25f, a}, {0.25f, a, 0.5f, a}, {0.5f, 0.01f, a, a}};
        float[][] other = {{b, 0.3f, 0.3f, b}, {0.6f, 0.3f, b, b}, {0.6f, b, b, 0.3f}};
        check(one, other);
        check(other, one);
      }
    }
  }

  @Test
  void changesItsWindowOnlyAndMayWriteOverEitherPicture() {
    for (int size : new int[] {0, 1, 2, 7, 63, 65}) {
      for (int offset : new int[] {0, 1, 5}) {
        int length = offset + size + 3;
        float[][] below = colours(new Lcg(3), length, -0.2, 1.5);
        float[][] frame = colours(new Lcg(4), length, -0.2, 1.5);
        float[][] out = new float[3][length];
        for (float[] plane : out) {
          Arrays.fill(plane, GUARD);
        }
        kernel().run(below, frame, out, offset, offset + size);
        float[][] overBelow = copy(below);
        kernel().run(overBelow, frame, overBelow, offset, offset + size);
        float[][] overFrame = copy(frame);
        kernel().run(below, overFrame, overFrame, offset, offset + size);
        for (int p = 0; p < 3; p++) {
          for (int i = 0; i < length; i++) {
            boolean in = i >= offset && i < offset + size;
            assertThat(out[p][i] == GUARD).isEqualTo(!in);
            assertThat(overBelow[p][i]).isEqualTo(in ? out[p][i] : below[p][i]);
            assertThat(overFrame[p][i]).isEqualTo(in ? out[p][i] : frame[p][i]);
          }
        }
      }
    }
  }

  @Test
  void windowsMakeNoDifferenceToABit() {
    float[][] below = colours(new Lcg(5), 777, -0.5, 3);
    float[][] frame = colours(new Lcg(6), 777, -0.5, 3);
    float[][] whole = new float[3][777];
    float[][] parts = new float[3][777];
    kernel().run(below, frame, whole, 0, 777);
    for (int from = 0, step = 1; from < 777; from += step, step = 2 * step + 1) {
      kernel().run(below, frame, parts, from, Math.min(777, from + step));
    }
    assertThat(Bits.sha256(parts)).isEqualTo(Bits.sha256(whole));
  }

  private static float[][] colours(Lcg noise, int count, double low, double high) {
    return new float[][] {
      noise.samples(count, low, high),
      noise.samples(count, low, high),
      noise.samples(count, low, high)
    };
  }

  private static float[][] copy(float[][] planes) {
    return new float[][] {planes[0].clone(), planes[1].clone(), planes[2].clone()};
  }

  private static double[] colour(float[][] planes, int i) {
    return new double[] {planes[0][i], planes[1][i], planes[2][i]};
  }

  private void check(float[][] below, float[][] frame) {
    int length = below[0].length;
    float[][] out = new float[3][length];
    kernel().run(below, frame, out, 0, length);
    for (int i = 0; i < length; i++) {
      double[] b = colour(below, i);
      double[] f = colour(frame, i);
      double[] want = formula(b, f);
      double bound = bound(b, f);
      for (int p = 0; p < 3; p++) {
        String what = "channel " + p + " of " + Arrays.toString(b) + " and " + Arrays.toString(f);
        Close.within(what, out[p][i], want[p], bound);
      }
    }
  }
}
