package org.duskply.engine.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.duskply.engine.adjust.AdjustKernel;
import org.duskply.engine.pixel.Held;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** What every adjustment's kernel holds to, whatever it does to colours. */
public abstract class AdjustKernelContract {
  /** The adjustment of one pixel in double, straight from its formula. */
  public interface Formula {
    double[] of(double red, double green, double blue);
  }

  /** How far a result may be from the formula, at one pixel. */
  public interface Bound {
    double of(double[] in, double[] want);
  }

  /**
   * A kernel and what it should do.
   *
   * @param bound derived where the case is made
   */
  public record Case(String name, AdjustKernel kernel, Formula formula, Bound bound) {}

  private static final float GUARD = -7.25f;

  /** Kernels to be held to the contract. */
  protected abstract List<Case> cases();

  /** An error in shares of the greatest of the pixel and 1: for formulas that keep the scale. */
  protected static Bound share(double tolerance) {
    return (in, want) -> tolerance * Math.max(1, Math.max(greatest(in), greatest(want)));
  }

  /** The greatest size among three channels. */
  protected static double greatest(double[] pixel) {
    return Math.max(Math.abs(pixel[0]), Math.max(Math.abs(pixel[1]), Math.abs(pixel[2])));
  }

  @TestFactory
  Stream<DynamicTest> agreesWithTheFormulaOnNoise() {
    return each(
        c -> {
          Lcg noise = new Lcg(1);
          check(c, planes(noise, 4096, 0, 1));
          check(c, planes(noise, 1024, -0.05, 4));
          check(c, planes(noise, 1024, 0, 0.01));
        });
  }

  @TestFactory
  Stream<DynamicTest> agreesWithTheFormulaAtEdges() {
    return each(
        c -> {
          float[] edges = Edges.values();
          int n = edges.length;
          float[][] planes = new float[3][4 * n];
          for (int i = 0; i < n; i++) {
            for (int p = 0; p < 3; p++) {
              planes[p][i] = edges[i];
              planes[p][n + i] = p == 0 ? edges[i] : 0.5f;
              planes[p][2 * n + i] = p == 1 ? edges[i] : 0.25f;
              planes[p][3 * n + i] = p == 2 ? edges[i] : 0.01f;
            }
          }
          check(c, planes);
        });
  }

  @TestFactory
  Stream<DynamicTest> changesItsWindowOnly() {
    return each(
        c -> {
          for (int size : new int[] {0, 1, 2, 7, 63, 65}) {
            for (int offset : new int[] {0, 1, 5}) {
              window(c, offset, size);
            }
          }
        });
  }

  @TestFactory
  Stream<DynamicTest> windowsMakeNoDifferenceToABit() {
    return each(
        c -> {
          float[][] whole = planes(new Lcg(5), 777, -0.1, 3);
          float[][] parts = copy(whole);
          run(c, whole, 0, 777);
          for (int from = 0, step = 1; from < 777; from += step, step = 2 * step + 1) {
            run(c, parts, from, Math.min(777, from + step));
          }
          assertThat(Bits.sha256(parts)).isEqualTo(Bits.sha256(whole));
        });
  }

  private void window(Case c, int offset, int size) {
    float[][] inside = planes(new Lcg(3), size, 0, 1.5);
    float[][] padded = new float[3][offset + size + 3];
    for (int p = 0; p < 3; p++) {
      java.util.Arrays.fill(padded[p], GUARD);
      System.arraycopy(inside[p], 0, padded[p], offset, size);
    }
    run(c, padded, offset, offset + size);
    run(c, inside, 0, size);
    for (int p = 0; p < 3; p++) {
      for (int i = 0; i < padded[p].length; i++) {
        boolean in = i >= offset && i < offset + size;
        assertThat(padded[p][i]).isEqualTo(in ? inside[p][i - offset] : GUARD);
      }
    }
  }

  private static void check(Case c, float[][] planes) {
    float[][] got = copy(planes);
    run(c, got, 0, got[0].length);
    for (int i = 0; i < got[0].length; i++) {
      double[] in = {planes[0][i], planes[1][i], planes[2][i]};
      double[] want = c.formula.of(in[0], in[1], in[2]);
      double bound = c.bound.of(in, want);
      for (int p = 0; p < 3; p++) {
        String what = "channel " + p + " of " + java.util.Arrays.toString(in);
        // Whatever multiplies light holds its result.
        double held = Math.max(-Held.MOST, Math.min(Held.MOST, want[p]));
        Close.within(what, got[p][i], held, bound);
      }
    }
  }

  private static void run(Case c, float[][] planes, int from, int to) {
    c.kernel.run(planes[0], planes[1], planes[2], from, to);
  }

  private static float[][] planes(Lcg noise, int count, double low, double high) {
    float[][] planes = new float[3][];
    for (int p = 0; p < 3; p++) {
      planes[p] = noise.samples(count, low, high);
    }
    return planes;
  }

  private static float[][] copy(float[][] planes) {
    return new float[][] {planes[0].clone(), planes[1].clone(), planes[2].clone()};
  }

  private Stream<DynamicTest> each(java.util.function.Consumer<Case> test) {
    return cases().stream().map(c -> DynamicTest.dynamicTest(c.name, () -> test.accept(c)));
  }
}
