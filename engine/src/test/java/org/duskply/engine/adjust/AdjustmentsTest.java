package org.duskply.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;
import static org.duskply.engine.adjust.AdjustKernelContract.adjusted;
import static org.duskply.engine.adjust.AdjustKernelContract.picture;
import static org.duskply.engine.adjust.AdjustKernelContract.space;
import static org.duskply.engine.adjust.CurveTest.curve;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.Digests;
import org.duskply.engine.testing.Sequence;
import org.duskply.engine.testing.reference.ReferenceAdjust;
import org.duskply.engine.testing.reference.Srgb;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Contrast;
import org.duskply.recipe.adjust.Exposure;
import org.duskply.recipe.adjust.Power;
import org.duskply.recipe.adjust.Saturation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Lists of adjustments: order, runs, and that no kind is forgotten. */
class AdjustmentsTest {
  private static final Adjustment SOFT =
      curve(Channel.RGB, Axis.ENCODED, 0, 0, 0.25, 0.15, 0.75, 0.85, 1, 1);
  private static final Adjustment RED = curve(Channel.RED, Axis.ENCODED, 0, 0.02, 1, 0.97);
  private static final Adjustment LIFT =
      curve(Channel.LUMINANCE, Axis.ENCODED, 0, 0, 0.4, 0.46, 1, 1);

  private static final List<Adjustment> MIXED =
      List.of(
          new Exposure(0.3),
          SOFT,
          new Power(0.9),
          RED,
          new Contrast(0.15, 0.18, Channel.RGB),
          LIFT,
          new Contrast(0.1, 0.18, Channel.LUMINANCE),
          new Saturation(1.1),
          new Exposure(-0.2));

  // Saturation at 1.1: as derived there with 1.3 for 7, so 11·2⁻²⁴; luminance: 16·2⁻²⁴ as in
  // ContrastTest; together less than 2⁻¹⁹.
  private static final double BOUND = 0x1p-19;

  static Stream<Class<?>> kinds() {
    return Stream.of(Adjustment.class.getPermittedSubclasses());
  }

  /** A kind without its own test class would be a kind nobody holds to anything. */
  @ParameterizedTest
  @MethodSource("kinds")
  void everyKindHasABindingAndIsHeldToTheContract(Class<?> kind)
      throws ReflectiveOperationException {
    Class<?> test =
        Class.forName(getClass().getPackageName() + "." + kind.getSimpleName() + "Test");
    assertThat(AdjustKernelContract.class).isAssignableFrom(test);
    AdjustKernelContract contract =
        (AdjustKernelContract) test.getDeclaredConstructor().newInstance();
    assertThat(contract.kind).isEqualTo(kind);
    assertThat(Bindings.of(contract.cases().get(0)).kind()).isEqualTo(kind);
  }

  @Test
  void anEmptyListLeavesTheBits() {
    assertThat(adjusted(List.of(), NamedSpace.SRGB, 0.1f, -0f, 3)).containsExactly(0.1f, -0f, 3);
  }

  @Test
  void aMixedListIsDoneInOrder() {
    float[][] p = picture(2000);
    float[][] made = picture(2000);
    Adjustments.prepare(MIXED, space(NamedSpace.REC2020)).run(made[0], made[1], made[2], 0, 2000);
    for (int i = 0; i < 2000; i++) {
      double[] wanted =
          ReferenceAdjust.of(MIXED, space(NamedSpace.REC2020), p[0][i], p[1][i], p[2][i]);
      for (int c = 0; c < 3; c++) {
        Close.check(i + "/" + c, made[c][i], wanted[c], BOUND);
      }
    }
  }

  @Test
  void orderCounts() {
    List<Adjustment> turned = new ArrayList<>(MIXED);
    Collections.reverse(turned);
    float[] one = adjusted(MIXED, NamedSpace.SRGB, 0.3f, 0.2f, 0.1f);
    float[] other = adjusted(turned, NamedSpace.SRGB, 0.3f, 0.2f, 0.1f);
    assertThat(Math.abs(one[0] - other[0])).isGreaterThan(0.001f);
  }

  /** However long the run: one rounding and one cubic's error, a fraction of a code. */
  @Test
  void aRunOfTonesIsRoundedOnce() {
    List<Adjustment> run = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      run.addAll(List.of(SOFT, new Power(0.8), new Exposure(0.1), new Power(1.25)));
    }
    float[] x = new Sequence(12).next(5000, 0, 1);
    float[] made = x.clone();
    Adjustments.prepare(run, space(NamedSpace.SRGB))
        .run(made, new float[5000], new float[5000], 0, 5000);
    for (int i = 0; i < 5000; i++) {
      double wanted = ReferenceAdjust.of(run, space(NamedSpace.SRGB), x[i], 0, 0)[0];
      Close.check(x[i], Srgb.encoded(made[i]), Srgb.encoded(wanted), 0.02 / 65535);
    }
  }

  @Test
  void identitiesWithinARunDoNotDivideIt() {
    List<Adjustment> plain = List.of(SOFT, new Power(0.9));
    List<Adjustment> padded =
        List.of(SOFT, new Saturation(1), new Contrast(0, 0.18, Channel.LUMINANCE), new Power(0.9));
    float[] one = adjusted(plain, NamedSpace.SRGB, 0.3f, 0.2f, 0.1f);
    assertThat(adjusted(padded, NamedSpace.SRGB, 0.3f, 0.2f, 0.1f)).containsExactly(one);
  }

  @Test
  void aRunLongerThanTheLongestIsStillRight() {
    List<Adjustment> run = new ArrayList<>();
    for (int i = 0; i < 5 * Adjustments.LONGEST_RUN; i++) {
      run.add(new Power(i % 2 == 0 ? 0.8 : 1.25));
    }
    run.add(new Power(2));
    float[] made = adjusted(run, NamedSpace.SRGB, 0.3f, 0.2f, 0.1f);
    float[] once = adjusted(List.of(new Power(2)), NamedSpace.SRGB, 0.3f, 0.2f, 0.1f);
    for (int p = 0; p < 3; p++) {
      Close.check(p, made[p], once[p], 1e-6); // six roundings, slopes up to 2
    }
  }

  @Test
  @Tag("bits")
  void sameBitsEverywhere() {
    float[][] made = picture(65536);
    Adjustments.prepare(MIXED, space(NamedSpace.REC2020)).run(made[0], made[1], made[2], 0, 65536);
    assertThat(Digests.of(made))
        .isEqualTo("3c4217df300fc7bf7fb7c2b2c812ea484a7ab56468a771661f525a5f6708f002");
  }
}
