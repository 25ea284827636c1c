package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.duskply.engine.testing.Close;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Contrast;
import org.junit.jupiter.api.Test;

/** Contrast: a straight line in stops about the pivot. */
class ContrastTest extends AdjustKernelContract {
  ContrastTest() {
    super(Contrast.class);
  }

  @Override
  List<Adjustment> cases() {
    return List.of(
        new Contrast(0.2, 0.18, Channel.LUMINANCE),
        new Contrast(-0.3, 0.18, Channel.LUMINANCE),
        new Contrast(0.2, 0.18, Channel.RGB),
        new Contrast(1, 0.5, Channel.RGB),
        new Contrast(-0.9, 0.18, Channel.RGB));
  }

  @Override
  List<Adjustment> identities() {
    return List.of(new Contrast(0, 0.18, Channel.LUMINANCE), new Contrast(0, 1, Channel.RGB));
  }

  @Override
  double bound() {
    return BOUND;
  }

  // Luminance: three products and two sums, each 2⁻²⁴ of a value that is at most the greatest
  // channel, then the curve, which turns a share of its argument into up to twice that share of its
  // answer (strength 1 and below), the gain, and the two products and sums that apply it.
  private static final double BOUND = 16 * 0x1p-24;

  @Test
  void aStopFromThePivotBecomesMoreThanOne() {
    List<Adjustment> list = List.of(new Contrast(0.5, 0.18, Channel.RGB));
    float[] made = adjusted(list, NamedSpace.SRGB, 0.18f, 0.36f, 0.045f);
    Close.check("pivot", made[0], 0.18, 1e-7);
    Close.check("one stop over, 1.5 after", made[1], 0.18 * StrictMath.pow(2, 1.5), 2e-7);
    Close.check("two under, three after", made[2], 0.18 / 8, 1e-7);
  }

  @Test
  void deepShadowsGoStraightToBlack() {
    List<Adjustment> list = List.of(new Contrast(-0.5, 0.18, Channel.RGB));
    float deep = 0.18f / 512;
    // Slope (1/256)^−0.5 = 16 from eight stops under the pivot on.
    float[] made = adjusted(list, NamedSpace.SRGB, deep, deep / 16, -deep);
    Close.check(0, made[0], 16.0 * deep, 1e-9);
    Close.check(1, made[1], (double) deep, 1e-9);
    Close.check(2, made[2], -16.0 * deep, 1e-9);
  }

  @Test
  void onLuminanceTheRatiosOfTheChannelsStay() {
    List<Adjustment> list = List.of(new Contrast(0.4, 0.18, Channel.LUMINANCE));
    float[] made = adjusted(list, NamedSpace.SRGB, 0.6f, 0.3f, 0.1f);
    Close.check("r/g", made[0] / (double) made[1], 2, 1e-6);
    Close.check("g/b", made[1] / (double) made[2], 3, 1e-6);
    double y = 0.6 * 0.2126 + 0.3 * 0.7152 + 0.1 * 0.0722; // ITU-R BT.709, to four digits
    Close.check("Y", made[1] / 0.3, StrictMath.pow(y / 0.18, 0.4), 1e-4);
  }

  @Test
  void belowBlackLuminanceIsNeutral() {
    List<Adjustment> list = List.of(new Contrast(0.4, 0.18, Channel.LUMINANCE));
    float[] made = adjusted(list, NamedSpace.SRGB, -1, 0.1f, 0.2f);
    assertThat(made[0]).isNegative().isEqualTo(made[1]).isEqualTo(made[2]);
  }
}
