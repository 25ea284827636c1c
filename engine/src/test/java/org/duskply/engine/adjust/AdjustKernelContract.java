package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.Sequence;
import org.duskply.engine.testing.reference.ReferenceAdjust;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.adjust.Adjustment;
import org.junit.jupiter.api.Test;

/** What every adjustment promises, whatever its formula. */
abstract class AdjustKernelContract {
  private static final float GUARD = -123.25f;
  private static final int PIXELS = 1001;

  /** Values where formulas change or floats end, with their neighbours added on both sides. */
  private static final float[] THRESHOLDS = {0, 0.0031308f, 0x1p-10f, 0.18f, 0.18f / 256, 1};

  private static final float[] EDGES = edges();

  final Class<? extends Adjustment> kind;

  AdjustKernelContract(Class<? extends Adjustment> kind) {
    this.kind = kind;
  }

  /** Parameters of this kind to try, none of which leaves the picture as it is. */
  abstract List<Adjustment> cases();

  /** Parameters that leave every picture as it is. */
  abstract List<Adjustment> identities();

  /**
   * How far from the double reference, as a share of the greatest channel going in or coming out or
   * of 1; derived by each kind.
   */
  abstract double bound();

  private static float[] edges() {
    float[] plain = {
      -65504,
      -1,
      -0.18f,
      -0.003f,
      -1e-4f,
      -Float.MIN_VALUE,
      -0f,
      Float.MIN_VALUE,
      1e-20f,
      1e-5f,
      0.5f,
      2,
      65504
    };
    float[] edges = Arrays.copyOf(plain, plain.length + 3 * THRESHOLDS.length);
    int at = plain.length;
    for (float threshold : THRESHOLDS) {
      edges[at++] = Math.nextDown(threshold);
      edges[at++] = threshold;
      edges[at++] = Math.nextUp(threshold);
    }
    return edges;
  }

  static ColourSpace space(NamedSpace name) {
    return ColourSpace.of(name);
  }

  static float[][] picture(int pixels) {
    return new float[][] {
      new Sequence(1).next(pixels, -0.1, 1.5),
      new Sequence(2).next(pixels, -0.1, 1.5),
      new Sequence(3).next(pixels, -0.1, 1.5)
    };
  }

  static float[] adjusted(List<Adjustment> list, NamedSpace working, float... rgb) {
    float[][] p = {{rgb[0]}, {rgb[1]}, {rgb[2]}};
    Adjustments.prepare(list, space(working)).run(p[0], p[1], p[2], 0, 1);
    return new float[] {p[0][0], p[1][0], p[2][0]};
  }

  final void follows(List<Adjustment> list, NamedSpace working, float[][] picture) {
    float[][] made = {picture[0].clone(), picture[1].clone(), picture[2].clone()};
    Adjustments.prepare(list, space(working)).run(made[0], made[1], made[2], 0, made[0].length);
    for (int i = 0; i < made[0].length; i++) {
      float[] in = {picture[0][i], picture[1][i], picture[2][i]};
      double[] wanted = ReferenceAdjust.of(list, space(working), in[0], in[1], in[2]);
      double greatest = 1;
      for (int p = 0; p < 3; p++) {
        wanted[p] = Math.max(-Float.MAX_VALUE, Math.min(Float.MAX_VALUE, wanted[p]));
        greatest = Math.max(greatest, Math.max(Math.abs(in[p]), Math.abs(wanted[p])));
      }
      for (int p = 0; p < 3; p++) {
        Object which = new Which(list, in, p);
        Close.check(which, made[p][i] / greatest, wanted[p] / greatest, bound());
      }
    }
  }

  /** Words only for what fails: there are a hundred thousand pixels. */
  private record Which(List<Adjustment> list, float[] in, int channel) {
    @Override
    public String toString() {
      return list + " on " + Arrays.toString(in) + " channel " + channel;
    }
  }

  @Test
  void picturesFollowTheFormulaInEverySpace() {
    for (Adjustment one : cases()) {
      for (NamedSpace working : NamedSpace.values()) {
        follows(List.of(one), working, picture(300));
      }
    }
  }

  @Test
  void edgesFollowTheFormula() {
    int n = EDGES.length;
    float[][] all = new float[3][n * n * n];
    for (int i = 0; i < n * n * n; i++) {
      all[0][i] = EDGES[i % n];
      all[1][i] = EDGES[i / n % n];
      all[2][i] = EDGES[i / n / n];
    }
    for (Adjustment one : cases()) {
      follows(List.of(one), NamedSpace.REC2020, all);
    }
  }

  @Test
  void writesItsWindowAlone() {
    for (Adjustment one : cases()) {
      AdjustKernel kernel = Adjustments.prepare(List.of(one), space(NamedSpace.SRGB));
      for (int length : new int[] {0, 1, 7, 64, 513}) {
        float[][] whole = picture(length);
        kernel.run(whole[0], whole[1], whole[2], 0, length);
        float[][] guarded = new float[3][length + 9];
        for (int p = 0; p < 3; p++) {
          Arrays.fill(guarded[p], GUARD);
          System.arraycopy(picture(length)[p], 0, guarded[p], 4, length);
        }
        kernel.run(guarded[0], guarded[1], guarded[2], 4, 4 + length);
        for (int p = 0; p < 3; p++) {
          Close.sameBits(Arrays.copyOfRange(guarded[p], 4, 4 + length), whole[p]);
          for (int i : new int[] {0, 3, length + 4, length + 8}) {
            assertThat(guarded[p][i]).isEqualTo(GUARD);
          }
        }
      }
    }
  }

  @Test
  void sameBitsHoweverItIsDivided() {
    for (Adjustment one : cases()) {
      AdjustKernel kernel = Adjustments.prepare(List.of(one), space(NamedSpace.REC2020));
      float[][] whole = picture(PIXELS);
      kernel.run(whole[0], whole[1], whole[2], 0, PIXELS);
      for (int width : new int[] {1, 3, 64, 512}) {
        float[][] parts = picture(PIXELS);
        for (int from = 0; from < PIXELS; from += width) {
          kernel.run(parts[0], parts[1], parts[2], from, Math.min(PIXELS, from + width));
        }
        for (int p = 0; p < 3; p++) {
          Close.sameBits(parts[p], whole[p]);
        }
      }
    }
  }

  @Test
  void finiteStaysFinite() {
    for (Adjustment one : cases()) {
      for (float r : new float[] {-65504, 0, 65504}) {
        for (float g : new float[] {-65504, 0, 65504}) {
          for (float v : adjusted(List.of(one), NamedSpace.SRGB, r, g, 65504)) {
            assertThat(v).as("%s", one).isFinite();
          }
        }
      }
    }
  }

  @Test
  void identitiesAreDropped() {
    for (Adjustment none : identities()) {
      assertThat(Adjustments.identity(none)).isTrue();
      float[][] picture = picture(PIXELS);
      Adjustments.prepare(List.of(none, none), space(NamedSpace.SRGB))
          .run(picture[0], picture[1], picture[2], 0, PIXELS);
      for (int p = 0; p < 3; p++) {
        Close.sameBits(picture[p], picture(PIXELS)[p]);
      }
    }
    for (Adjustment one : cases()) {
      assertThat(Adjustments.identity(one)).isFalse();
    }
  }

  @Test
  void isOfItsKind() {
    assertThat(cases()).isNotEmpty().allMatch(kind::isInstance);
    assertThat(identities()).isNotEmpty().allMatch(kind::isInstance);
  }
}
