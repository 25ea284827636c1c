package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the reader makes of sound profiles. */
class IccReaderTest {
  private static final TransferCurve SRGB = ColourSpace.of(NamedSpace.SRGB).curve(0);

  /** ICC.1:2010 annex: the adaptation from D65 that profiles store, rounded to four digits. */
  private static final double[] FROM_D65 = {
    1.0478, 0.0229, -0.0501, 0.0295, 0.9905, -0.0171, -0.0092, 0.0150, 0.7517
  };

  private static TransferCurve curve(byte[] curve) {
    return IccReader.read(ProfileBytes.rgb().curves(curve).bytes()).curve(1);
  }

  /** ICC.1:2010, 10.5: no number is the identity, one is a gamma in 1/256, more are samples. */
  @Test
  void curveTypeIsReadInItsThreeForms() {
    assertThat(curve(ProfileBytes.curv())).isEqualTo(TransferCurve.identity());
    assertThat(curve(ProfileBytes.curv(0x0100))).isEqualTo(TransferCurve.identity());
    assertThat(curve(ProfileBytes.curv(0x0233))).isEqualTo(TransferCurve.gamma(563 / 256.0));
    assertThat(curve(ProfileBytes.curv(0, 0xFFFF)).toLinear(0.25)).isEqualTo(0.25);
    TransferCurve gamma = TransferCurve.gamma(2.6);
    TransferCurve table = curve(ProfileBytes.curv(gamma, 4096));
    for (int i = 0; i <= 1000; i++) {
      // half a step of 1/65535, and a chord's sag: second derivative 4.2 / 8 / 4095²
      double bound = 0.5 / 65535 + 4e-8;
      assertThat(table.toLinear(i / 1000.0)).isCloseTo(gamma.toLinear(i / 1000.0), within(bound));
    }
  }

  /**
   * ICC.1:2010, table 65, written out: the five functions with g = 2, a = 0.5, b = 0.5 (−0.25 for
   * types 1 and 2), and so on. All numbers are exact in 1/65536.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.125, 0.25, 0.375, 0.4375, 0.5, 0.5625, 0.75, 1})
  void parametricCurveTypeIsReadInItsFiveForms(double x) {
    assertThat(curve(ProfileBytes.para(0, 2)).toLinear(x)).isEqualTo(x * x);

    double base = 0.5 * x - 0.25;
    double one = x >= 0.5 ? base * base : 0;
    assertThat(curve(ProfileBytes.para(1, 2, 0.5, -0.25)).toLinear(x)).isEqualTo(one);
    double two = x >= 0.5 ? base * base + 0.125 : 0.125;
    assertThat(curve(ProfileBytes.para(2, 2, 0.5, -0.25, 0.125)).toLinear(x)).isEqualTo(two);

    double power = (0.5 * x + 0.5) * (0.5 * x + 0.5);
    double three = x >= 0.375 ? power : 0.25 * x;
    assertThat(curve(ProfileBytes.para(3, 2, 0.5, 0.5, 0.25, 0.375)).toLinear(x)).isEqualTo(three);
    double four = x >= 0.375 ? power + 0.0625 : 0.25 * x + 0.03125;
    assertThat(curve(ProfileBytes.para(4, 2, 0.5, 0.5, 0.25, 0.375, 0.0625, 0.03125)).toLinear(x))
        .isEqualTo(four);
  }

  @Test
  void everyReadCurveComesBackWhereItRises() {
    byte[][] curves = {
      ProfileBytes.para(1, 2, 0.5, -0.25),
      ProfileBytes.para(2, 2, 0.5, -0.25, 0.125),
      ProfileBytes.para(4, 2.2, 0.9, 0.1, 0.25, 0.125, -0.001, 0.01),
      ProfileBytes.curv(TransferCurve.gamma(1.8), 33)
    };
    for (byte[] bytes : curves) {
      TransferCurve curve = curve(bytes);
      for (double v : new double[] {-1.5, -0.8, 0, 0.6, 0.99, 1, 1.7}) {
        assertThat(curve.toEncoded(curve.toLinear(v))).isCloseTo(v, within(1e-9));
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"0.0004, SRGB", "-0.0004, SRGB", "0.0006,", "-0.0006,"})
  void primariesWithinHalfAThousandthAreTheNamedSpace(double off, NamedSpace expected) {
    byte[] profile =
        ProfileBytes.rgb()
            .tag("gXYZ", ProfileBytes.xyz(0.385151, 0.716887, 0.097081 + off))
            .curves(ProfileBytes.curv(SRGB, 1024))
            .bytes();
    assertThat(IccReader.read(profile).named()).isEqualTo(expected);
    if (expected != null) {
      assertThat(IccReader.read(profile)).isSameAs(ColourSpace.of(expected));
    }
  }

  @ParameterizedTest
  @CsvSource({"26, SRGB", "-26, SRGB", "46,", "-46,"})
  void oneCurvePointBeyondHalfAThousandthIsAnotherSpace(int off, NamedSpace expected) {
    int[] samples = new int[17];
    for (int i = 0; i < 17; i++) {
      samples[i] = (int) Math.round(65535 * SRGB.toLinear(i / 16.0));
    }
    samples[9] += off;
    byte[] near = ProfileBytes.curv(SRGB, 1024);
    byte[] profile =
        ProfileBytes.rgb().curves(near).tag("bTRC", ProfileBytes.curv(samples)).bytes();
    assertThat(IccReader.read(profile).named()).isEqualTo(expected);
  }

  @Test
  void theDescriptionNeverCounts() {
    ColourSpace space =
        IccReader.read(ProfileBytes.rgb().curves(ProfileBytes.curv(0x01CD)).bytes());
    assertThat(space.named()).as("the text says sRGB, the curve does not").isNull();
    assertThat(space.name()).isEqualTo("embedded profile");
    assertThat(space.curve(0)).isEqualTo(TransferCurve.gamma(0x01CD / 256.0));
  }

  @Test
  void ownNumbersStandUnderTheWhiteTheySumTo() {
    ColourSpace space = IccReader.read(ProfileBytes.rgb().curves(ProfileBytes.curv()).bytes());
    // each of three columns is rounded to 1/65536
    assertThat(space.white()[0]).isCloseTo(0.9642, within(3e-5));
    assertThat(space.white()[1]).isCloseTo(1, within(1e-15));
    assertThat(space.white()[2]).isCloseTo(0.8249, within(3e-5));
    double[] toSrgb = ColourSpace.matrix(space, ColourSpace.of(NamedSpace.SRGB));
    double[] neutral = Matrix3.apply(toSrgb, 1, 1, 1);
    for (int i = 0; i < 3; i++) {
      assertThat(neutral[i]).isCloseTo(1, within(1e-14));
      // columns printed to six digits, times the largest number of XYZ → sRGB, 3.3
      assertThat(toSrgb[4 * i]).isCloseTo(1, within(3e-4));
    }
  }

  @Test
  void aBradfordAdaptationGivesTheWhiteBack() {
    ProfileBytes bytes = ProfileBytes.rgb().curves(ProfileBytes.curv());
    ColourSpace space =
        IccReader.read(bytes.tag("chad", ProfileBytes.adaptation(FROM_D65)).bytes());
    // the matrix is rounded to 5e-5, and its inverse enlarges blue by 1.33
    assertThat(space.white()[0]).isCloseTo(0.95046, within(2e-4));
    assertThat(space.white()[2]).isCloseTo(1.08906, within(4e-4));
    assertThat(space.luminance()[0]).isCloseTo(0.2126, within(2e-4));
    assertThat(space.luminance()[2]).isCloseTo(0.0722, within(2e-4));

    double[] notBradford = {0.9858, 0, 0, 0, 1, 0, 0, 0, 0.7575};
    ColourSpace plain =
        IccReader.read(bytes.tag("chad", ProfileBytes.adaptation(notBradford)).bytes());
    assertThat(plain.white()[2]).as("stays D50").isCloseTo(0.8249, within(3e-5));
  }

  @Test
  void greyIsOneCurveInAnyPrimaries() {
    ColourSpace space =
        IccReader.read(ProfileBytes.grey().tag("kTRC", ProfileBytes.curv(0x0233)).bytes());
    assertThat(space.grey()).isTrue();
    assertThat(space.named()).isNull();
    for (int channel = 0; channel < 3; channel++) {
      assertThat(space.curve(channel)).isEqualTo(TransferCurve.gamma(563 / 256.0));
    }
  }

  @Test
  void primariesAreUsedWhereTablesStandBesideThem() {
    byte[] profile =
        ProfileBytes.rgb().curves(ProfileBytes.curv(SRGB, 1024)).tag("A2B0", new byte[64]).bytes();
    assertThat(IccReader.read(profile).named()).isEqualTo(NamedSpace.SRGB);
  }

  @Test
  void bytesAfterTheEndAreNotLookedAt() {
    byte[] profile = ProfileBytes.rgb().curves(ProfileBytes.curv(SRGB, 1024)).bytes();
    byte[] padded = java.util.Arrays.copyOf(profile, profile.length + 1001);
    assertThat(IccReader.read(padded).named()).isEqualTo(NamedSpace.SRGB);
  }

  @Test
  void aWrongIlluminantInTheHeaderDoesNoHarm() {
    byte[] profile =
        ProfileBytes.rgb()
            .curves(ProfileBytes.curv(SRGB, 1024))
            .header(68, 0)
            .header(76, -1)
            .bytes();
    assertThat(IccReader.read(profile).named()).isEqualTo(NamedSpace.SRGB);
  }
}
