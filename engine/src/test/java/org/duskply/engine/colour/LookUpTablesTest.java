package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.color.ICC_ColorSpace;
import java.awt.color.ICC_Profile;
import java.util.Map;
import java.util.Random;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Profiles of look-up tables, built byte by byte, against the formulas and against LittleCMS. */
class LookUpTablesTest {
  private static final ColourSpace LIGHT = ColourSpace.of(NamedSpace.REC2020);

  /**
   * A press: paper is nearly white, each ink takes its share of light. No product of two inks, so
   * that every rule of going between four corners of the grid gives the same.
   */
  private static double press(double[] ink, int channel) {
    double black = ink.length > 3 ? 0.3 * ink[3] : 0;
    return switch (channel) {
      case 0 -> (1 - 0.25 * ink[0] - 0.3 * ink[1] - 0.1 * ink[2] - black) * 0.9;
      case 1 -> 0.5 + 0.2 * (ink[1] - ink[0]);
      default -> 0.5 + 0.3 * (ink[2] - 0.4 * ink[0]);
    };
  }

  private static ColourSpace read(String device, String connection, Map<String, byte[]> tables) {
    return IccReader.read(LookUpBytes.profile(device, connection, tables));
  }

  private static double[] run(LookUpTables tables, float... device) {
    float[][] in = new float[device.length][1];
    for (int c = 0; c < device.length; c++) {
      in[c][0] = device[c];
    }
    float[][] out = new float[3][1];
    tables.run(in, 0, 1, out[0], out[1], out[2], 0);
    return new double[] {out[0][0], out[1][0], out[2][0]};
  }

  /** CIE 15: L* = 50 is 18.418 % of the light of white, neutral where a* = b* = 0. */
  @Test
  void middleGreyIsMiddleGrey() {
    double half = 128.0 / 255; // a* = b* = 0, as lut8 has it
    byte[] table = LookUpBytes.lut8(3, 2, (axis, c) -> c == 0 ? axis[0] : half);
    LookUpTables tables = read("RGB ", "Lab ", Map.of("A2B0", table)).tables();
    assertThat(tables).isNotNull();
    double[] grey = run(tables, 0.5f, 0.1f, 0.9f);
    for (double v : grey) {
      // Under D50 of the profile's own digits, 2e-5 from that of the adaptation.
      assertThat(v).isCloseTo(0.184187, within(1e-5));
    }
    for (double v : run(tables, 1, 0, 0)) {
      assertThat(v).isCloseTo(1, within(1e-6));
    }
    assertThat(run(tables, 0, 0, 0)).containsExactly(new double[3], within(1e-7));
  }

  /** Lut16 holds L* = 100 as 0xFF00 and a* = 0 as 0x8000 (ICC.1:2010, 6.3.4.2, table 13). */
  @Test
  void theOldFormOfLab() {
    byte[] table = LookUpBytes.lut16(3, 2, (axis, c) -> (c == 0 ? 0xff00 : 0x8000) / 65535.0);
    LookUpTables tables = read("RGB ", "Lab ", Map.of("A2B0", table)).tables();
    assertThat(tables).isNotNull();
    assertThat(run(tables, 0.3f, 0.3f, 0.3f)).containsExactly(new double[] {1, 1, 1}, within(1e-6));
  }

  /** XYZ: 0x8000 stands for 1 (ICC.1:2010, 6.3.4.2, table 11). */
  @Test
  void tablesThatLeadToXyz() {
    double[] d50 = White.profileConnection();
    byte[] table = LookUpBytes.lut16(3, 2, (axis, c) -> axis[0] * d50[c] * 32768 / 65535);
    LookUpTables tables = read("RGB ", "XYZ ", Map.of("A2B0", table)).tables();
    assertThat(tables).isNotNull();
    // Half a step of 1/32768 in each of X, Y, Z, through rows of the matrix that sum to 2.4 or
    // less.
    assertThat(run(tables, 0.25f, 0, 0))
        .containsExactly(new double[] {0.25, 0.25, 0.25}, within(2.4 * 0.25 / 65536 * 2));
  }

  /** White must stay white: the colorimetric intent before the perceptual before the saturated. */
  @Test
  void theIntents() {
    byte[] colorimetric = LookUpBytes.lut8(3, 2, (axis, c) -> c == 0 ? 0.5 : 128.0 / 255);
    byte[] perceptual = LookUpBytes.lut8(3, 2, (axis, c) -> c == 0 ? 0.2 : 128.0 / 255);
    byte[] saturated = LookUpBytes.lut8(3, 2, (axis, c) -> c == 0 ? 0.8 : 128.0 / 255);
    double first = green(Map.of("A2B0", perceptual, "A2B1", colorimetric, "A2B2", saturated));
    double second = green(Map.of("A2B0", perceptual, "A2B2", saturated));
    double third = green(Map.of("A2B2", saturated));
    assertThat(first).isEqualTo(green(Map.of("A2B1", colorimetric)));
    assertThat(second).isEqualTo(green(Map.of("A2B0", perceptual)));
    assertThat(second).isLessThan(first);
    assertThat(third).isGreaterThan(first);
  }

  private static double green(Map<String, byte[]> tables) {
    LookUpTables read = read("RGB ", "Lab ", tables).tables();
    return read == null ? Double.NaN : run(read, 0, 0, 0)[1];
  }

  /** Where there are primaries and curves, they count, and the frame keeps its exact path. */
  @Test
  void primariesBeforeTables() {
    byte[] profile =
        ProfileBytes.rgb()
            .curves(ProfileBytes.curv(0x0233))
            .tag("A2B0", LookUpBytes.lut8(3, 2, LookUpTablesTest::press))
            .bytes();
    assertThat(IccReader.read(profile).tables()).isNull();
  }

  /** Values beyond the ends of the tables, and none at all, are held to them. */
  @Test
  void beyondTheEnds() {
    LookUpTables tables =
        read("RGB ", "Lab ", Map.of("A2B0", LookUpBytes.lut16(3, 5, LookUpTablesTest::press)))
            .tables();
    assertThat(tables).isNotNull();
    assertThat(run(tables, -3, 0, Float.NaN)).isEqualTo(run(tables, 0, 0, 0));
    assertThat(run(tables, 7, Float.POSITIVE_INFINITY, 1)).isEqualTo(run(tables, 1, 1, 1));
  }

  /**
   * LittleCMS, in the JDK, on the same tables. It works in 16 bits: its Lab comes rounded to
   * 1/65535, a step of L* of 0.0015; it makes a grid of its own of the whole way, 33 points for RGB
   * and 23 for CMYK, whose straight pieces miss the curve between L* and light by up to (1/22)²/8
   * times its second derivative, at most 6·0.9²: 1.3e-3.
   */
  @Test
  void littleCmsFindsTheSame() {
    for (byte[] profile :
        new byte[][] {
          LookUpBytes.profile(
              "RGB ", "Lab ", Map.of("A2B0", LookUpBytes.lut16(3, 9, LookUpTablesTest::press))),
          LookUpBytes.profile(
              "RGB ", "Lab ", Map.of("A2B0", LookUpBytes.lut8(3, 9, LookUpTablesTest::press))),
          LookUpBytes.profile(
              "RGB ",
              "Lab ",
              Map.of("A2B0", LookUpBytes.staged(3, 9, LookUpTablesTest::press, 1.8))),
          LookUpBytes.profile(
              "CMYK", "Lab ", Map.of("A2B0", LookUpBytes.lut16(4, 5, LookUpTablesTest::press))),
        }) {
      agrees(profile, 1.3e-3);
    }
  }

  static void agrees(byte[] profile, double bound) {
    LookUpTables tables = IccReader.read(profile).tables();
    assertThat(tables).isNotNull();
    ICC_ColorSpace other = new ICC_ColorSpace(ICC_Profile.getInstance(profile));
    double[] toD50 =
        Matrix3.multiply(Bradford.between(LIGHT.white(), White.profileConnection()), LIGHT.toXyz());
    Random random = new Random(7);
    for (int n = 0; n < 300; n++) {
      float[] device = new float[tables.channels()];
      for (int c = 0; c < device.length; c++) {
        device[c] = n < 16 ? n >> c & 1 : random.nextFloat();
      }
      double[] ours = Matrix3.apply(toD50, run(tables, device));
      float[] theirs = other.toCIEXYZ(device);
      for (int c = 0; c < 3; c++) {
        assertThat((double) theirs[c])
            .as("%d of %s: %d", n, new String(profile, 12, 8), profile.length)
            .isCloseTo(Math.max(0, ours[c]), within(bound));
      }
    }
  }

  /** The same bits on every Java runtime. */
  @Test
  @Tag("bits")
  void bitsArePinned() {
    byte[] profile =
        LookUpBytes.profile(
            "RGB ", "Lab ", Map.of("A2B0", LookUpBytes.staged(3, 9, LookUpTablesTest::press, 1.8)));
    LookUpTables tables = IccReader.read(profile).tables();
    assertThat(tables).isNotNull();
    float[][] device = new float[3][4096];
    for (int i = 0; i < 4096; i++) {
      for (int c = 0; c < 3; c++) {
        device[c][i] = (i * (c + 1) * 37 & 4095) / 4095f;
      }
    }
    float[][] out = new float[3][4096];
    tables.run(device, 0, 4096, out[0], out[1], out[2], 0);
    int hash = 1;
    for (float[] plane : out) {
      for (float v : plane) {
        hash = 31 * hash + Float.floatToIntBits(v + 0f);
      }
    }
    assertThat(hash).isEqualTo(-1447726868);
  }
}
