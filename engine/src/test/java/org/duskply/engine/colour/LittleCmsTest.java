package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_ColorSpace;
import java.awt.color.ICC_Profile;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Our ICC maths against LittleCMS, the colour engine in the JDK. It takes and gives 16 bits: input
 * in 1/65535, XYZ in 1/32768.
 */
class LittleCmsTest {
  /**
   * Half a step of the input times the steepest curve, 2.3 (the three columns of a row sum to 1 or
   * less): 1.8e-5; half a step of XYZ: 1.5e-5; three columns rounded to 1/65536: 2.3e-5; curve
   * constants rounded to 1/65536, through the same slope: 3.5e-5; LittleCMS's own tables and sums
   * in 16 bits, two roundings of 1/65535: 1.5e-5. Together 1.1e-4.
   */
  private static final double BOUND = 1.1e-4;

  private static final float[][] COLOURS = {
    {0, 0, 0},
    {1, 1, 1},
    {1, 0, 0},
    {0, 1, 0},
    {0, 0, 1},
    {0.5f, 0.5f, 0.5f},
    {0.2f, 0.6f, 0.4f},
    {0.9f, 0.45f, 0.1f},
    {0.05f, 0.1f, 0.3f},
    {0.6f, 0.55f, 0.4f},
    {0.02f, 0.01f, 0.015f}
  };

  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void readsOurProfilesAsWeMeanThem(NamedSpace name) {
    ICC_Profile profile = ICC_Profile.getInstance(IccWriter.profile(name));
    assertThat(profile.getColorSpaceType()).isEqualTo(ColorSpace.TYPE_RGB);
    assertAgrees(ColourSpace.of(name), profile);
  }

  @Test
  void agreesOnTheNumbersOfAProfileOfItsOwn() {
    byte[][] curves = {
      ProfileBytes.curv(0x01CD),
      ProfileBytes.curv(TransferCurve.gamma(1.7), 1024),
      ProfileBytes.para(1, 2.1, 0.95, 0.05),
      ProfileBytes.para(3, 2.3, 0.9, 0.1, 0.05, 0.03)
    };
    for (byte[] curve : curves) {
      byte[] bytes = ProfileBytes.rgb().header(8, 0x04200000).curves(curve).bytes();
      ColourSpace space = IccReader.read(bytes);
      assertThat(space.named()).isNull();
      assertAgrees(space, ICC_Profile.getInstance(bytes));
    }
  }

  private static void assertAgrees(ColourSpace space, ICC_Profile profile) {
    double[] toXyz = NamedMatch.adapted(space);
    ICC_ColorSpace other = new ICC_ColorSpace(profile);
    for (float[] colour : COLOURS) {
      double[] linear = new double[3];
      for (int i = 0; i < 3; i++) {
        linear[i] = space.curve(i).toLinear(colour[i]);
      }
      double[] ours = Matrix3.apply(toXyz, linear);
      float[] theirs = other.toCIEXYZ(colour);
      for (int i = 0; i < 3; i++) {
        // XYZ cannot be negative there
        assertThat((double) theirs[i]).isCloseTo(Math.max(0, ours[i]), within(BOUND));
      }
    }
  }
}
