package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Matrices, whites and conversions of the named spaces against published numbers. */
class ColourSpaceTest {
  private static final double PRINTED_TEN = 0.6e-10;

  private static void assertClose(double[] actual, double[] expected, double bound) {
    assertThat(actual).hasSameSizeAs(expected);
    for (int i = 0; i < actual.length; i++) {
      assertThat(actual[i])
          .as("%d of %s, wanted %s", i, Arrays.toString(actual), Arrays.toString(expected))
          .isCloseTo(expected[i], within(bound));
    }
  }

  private static double[] numbers(String text) {
    return Arrays.stream(text.trim().split("[ ,]+")).mapToDouble(Double::parseDouble).toArray();
  }

  /** CSS Color 4, sample code for colour conversions: the rationals of lin_sRGB_to_XYZ. */
  @Test
  void srgbToXyzIsTheRationalOfCssColor4() {
    double[] rationals = {
      506752.0 / 1228815, 87881.0 / 245763, 12673.0 / 70218,
      87098.0 / 409605, 175762.0 / 245763, 12673.0 / 175545,
      7918.0 / 409605, 87881.0 / 737289, 1001167.0 / 1053270
    };
    assertClose(ColourSpace.of(NamedSpace.SRGB).toXyz(), rationals, 4e-16);
  }

  /** CSS Color 4 for all five, to the ten decimals printed here. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "SRGB|0.4123907993 0.3575843394 0.1804807884 0.2126390059 0.7151686788 0.0721923154"
            + " 0.0193308187 0.1191947798 0.9505321522",
        "DISPLAY_P3|0.4865709486 0.2656676932 0.1982172852 0.2289745641 0.6917385218 0.0792869141"
            + " 0 0.0451133819 1.0439443689",
        "A98_RGB|0.5766690429 0.1855582379 0.1882286462 0.2973449753 0.6273635663 0.0752914585"
            + " 0.0270313614 0.0706888525 0.9913375368",
        "REC2020|0.6369580483 0.1446169036 0.1688809752 0.262700212 0.6779980715 0.0593017165"
            + " 0 0.028072693 1.0609850577",
        "PROPHOTO_RGB|0.7977666449 0.1351812974 0.0313477341 0.2880748288 0.7118352342 0.0000899369"
            + " 0 0 0.8251046025"
      })
  void toXyzIsPublished(NamedSpace name, String matrix) {
    ColourSpace space = ColourSpace.of(name);
    double[] expected = numbers(matrix);
    assertClose(space.toXyz(), expected, PRINTED_TEN);
    assertClose(space.luminance(), Arrays.copyOfRange(expected, 3, 6), PRINTED_TEN);
    assertThat(Arrays.stream(space.luminance()).sum()).isCloseTo(1, within(2e-16));
    assertThat(space.named()).isEqualTo(name);
    assertThat(space.name()).isEqualTo(name.key());
    assertThat(space.grey()).isFalse();
    assertThat(ColourSpace.of(name)).isSameAs(space);
  }

  /** CSS Color 4, D65_to_D50 and D50_to_D65; ICC.1 for the white that profiles store. */
  @Test
  void bradfordIsPublished() {
    assertClose(
        Bradford.between(White.d65(), White.d50()),
        numbers(
            "1.0479297925 0.0229468706 -0.0501922663 0.0296278088 0.9904344268 -0.0170737991"
                + " -0.0092430406 0.0150551915 0.7518742814"),
        PRINTED_TEN);
    assertClose(
        Bradford.between(White.d50(), White.d65()),
        numbers(
            "0.9554734215 -0.0230984549 0.0632592432 -0.0283697093 1.0099953981 0.0210414412"
                + " 0.0123140149 -0.0205076493 1.3303659262"),
        PRINTED_TEN);
    // computed with (0.9642, 1, 0.8249) before its rounding to 1/65536
    assertClose(
        Bradford.between(White.d65(), White.profileConnection()),
        numbers(
            "1.0478860032 0.0229187652 -0.0502160953 0.0295817825 0.9904835185 -0.0170787077"
                + " -0.0092518808 0.0150726075 0.7516781336"),
        1e-5);
    assertThat(Bradford.between(White.d65(), White.d65())).isEqualTo(Matrix3.identity());
  }

  /**
   * Colours computed from the published formulas with NumPy and two JavaScript colour libraries,
   * confirmed by LittleCMS; printed to seven decimals. A power curve turns 1e-17 of light into 3e-8
   * of code, so that zeros hold to 1e-6 only.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1 1 1|1 1 1|1 1 1|1 1 1|1 1 1",
        "0.5 0.5 0.5|0.5 0.5 0.5|0.4961037 0.4961037 0.4961037|0.4246724 0.4246724 0.4246724"
            + "|0.2140411 0.2140411 0.2140411",
        "1 0 0|0.9174876 0.2002868 0.1385606|0.8585916 0 0|0.7022481 0.2757205 0.1035477"
            + "|0.6274039 0.0690973 0.0163914",
        "0 1 0|0.4584016 0.9852646 0.2982947|0.5649723 1 0.2344238|0.5402822 0.9275988 0.304566"
            + "|0.329283 0.9195404 0.0880133",
        "0 0 1|0 0 0.959588|0 0 0.9810688|0.3362052 0.1376303 0.9228661"
            + "|0.0433131 0.0113623 0.8955953",
        "0.2 0.6 0.4|0.3204606 0.5918107 0.4163364|0.3731592 0.5944145 0.4096927"
            + "|0.3372667 0.4981256 0.3524525|0.131417 0.2967138 0.1475752",
        "0.9 0.45 0.1|0.8422391 0.4744133 0.2057706|0.7997259 0.4475356 0.1552669"
            + "|0.6608988 0.4385442 0.1719371|0.5506501 0.2114368 0.0369022",
        "0.05 0.1 0.3|0.0611688 0.0986903 0.2880871|0.095178 0.1233208 0.2996723"
            + "|0.0994324 0.0824762 0.2183411|0.008942 0.0103205 0.0665391",
        "0.02 0.01 0.015|0.0182246 0.0103319 0.0147234|0.0491839 0.0384846 0.0459864"
            + "|0.0198088 0.0137764 0.0179518|0.0012764 0.0008319 0.0011333"
      })
  void srgbColoursComeOutAsPublished(
      String srgb, String p3, String a98, String prophoto, String rec2020Linear) {
    double[] coded = numbers(srgb);
    assertClose(convert(NamedSpace.SRGB, NamedSpace.DISPLAY_P3, coded), numbers(p3), 1e-6);
    assertClose(convert(NamedSpace.SRGB, NamedSpace.A98_RGB, coded), numbers(a98), 1e-6);
    assertClose(convert(NamedSpace.SRGB, NamedSpace.PROPHOTO_RGB, coded), numbers(prophoto), 1e-6);
    assertClose(linear(NamedSpace.SRGB, NamedSpace.REC2020, coded), numbers(rec2020Linear), 1e-6);
  }

  /** From the same sources: outside the smaller space nothing is clipped, below 0 it is odd. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "DISPLAY_P3|1 0 0|1.0930664 -0.226742 -0.1501346",
        "DISPLAY_P3|0 1 0|-0.511605 1.0182657 -0.3106746",
        "A98_RGB|0 1 0|-0.6639501 1 -0.2291615",
        "PROPHOTO_RGB|0.5 0.9 0.2|-0.2048713 0.9790873 -0.2830552",
        "PROPHOTO_RGB|1 1 1|1 1 1"
      })
  void widerColoursLeaveSrgbUnclipped(NamedSpace from, String coded, String srgb) {
    assertClose(convert(from, NamedSpace.SRGB, numbers(coded)), numbers(srgb), 1e-6);
  }

  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void theMatrixToItselfIsExactlyTheIdentity(NamedSpace name) {
    ColourSpace space = ColourSpace.of(name);
    assertThat(ColourSpace.matrix(space, space)).isEqualTo(Matrix3.identity());
    ColourSpace grey = ColourSpace.grey(space.curve(0));
    assertThat(grey.samePrimaries(space)).isTrue();
    assertThat(ColourSpace.matrix(grey, space)).isEqualTo(Matrix3.identity());
    assertThat(ColourSpace.matrix(space, grey)).isEqualTo(Matrix3.identity());
    assertThat(grey.grey()).isTrue();
    assertThat(grey.named()).isNull();
  }

  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void neutralStaysNeutralThereAndBack(NamedSpace name) {
    for (NamedSpace other : NamedSpace.values()) {
      double[] there = ColourSpace.matrix(ColourSpace.of(name), ColourSpace.of(other));
      double[] back = ColourSpace.matrix(ColourSpace.of(other), ColourSpace.of(name));
      assertClose(Matrix3.apply(there, 1, 1, 1), new double[] {1, 1, 1}, 1e-15);
      assertClose(Matrix3.multiply(back, there), Matrix3.identity(), 1e-14);
    }
  }

  @Test
  void handedOutArraysAreCopies() {
    ColourSpace space = ColourSpace.of(NamedSpace.SRGB);
    space.toXyz()[0] = 9;
    space.white()[0] = 9;
    space.luminance()[0] = 9;
    assertThat(space.toXyz()[0]).isLessThan(1);
    assertThat(space.white()[0]).isLessThan(1);
    assertThat(space.luminance()[0]).isLessThan(1);
  }

  private static double[] convert(NamedSpace from, NamedSpace to, double[] coded) {
    double[] out = linear(from, to, coded);
    for (int i = 0; i < 3; i++) {
      out[i] = ColourSpace.of(to).curve(i).toEncoded(out[i]);
    }
    return out;
  }

  private static double[] linear(NamedSpace from, NamedSpace to, double[] coded) {
    double[] in = new double[3];
    for (int i = 0; i < 3; i++) {
      in[i] = ColourSpace.of(from).curve(i).toLinear(coded[i]);
    }
    return Matrix3.apply(ColourSpace.matrix(ColourSpace.of(from), ColourSpace.of(to)), in);
  }
}
