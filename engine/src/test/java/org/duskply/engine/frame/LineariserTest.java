package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.TransferCurve;
import org.duskply.engine.frame.FrameInfo.Alpha;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.testing.Close;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;

/** Native samples to linear working values, against the formulas in double. */
class LineariserTest {
  private static final ColourSpace SRGB = ColourSpace.of(NamedSpace.SRGB);
  private static final ColourSpace P3 = ColourSpace.of(NamedSpace.DISPLAY_P3);
  private static final ColourSpace WIDE = ColourSpace.of(NamedSpace.REC2020);
  private static final float GUARD = -77f;

  private static FrameInfo info(int channels, Alpha alpha, Samples.Kind kind, double fullScale) {
    return new FrameInfo(8, 4, channels, alpha, kind, fullScale, null, null, Exif.NONE, List.of());
  }

  /** The row from column 2 to 7 of a block that begins at row 3, with guards on both sides. */
  private static float[][] row(Lineariser l, Samples s, int y) {
    float[][] planes = new float[4][9];
    for (float[] plane : planes) {
      java.util.Arrays.fill(plane, GUARD);
    }
    l.row(s, y, 2, 7, planes[0], planes[1], planes[2], planes[3], 3);
    for (float[] plane : planes) {
      assertThat(plane[2]).isEqualTo(GUARD);
      assertThat(plane[8]).isEqualTo(GUARD);
    }
    return planes;
  }

  private static short[] shorts(int count) {
    Random random = new Random(11);
    short[] data = new short[count];
    for (int i = 0; i < count; i++) {
      data[i] = (short) random.nextInt(65536);
    }
    return data;
  }

  @Test
  void everySixteenBitCodeIsTheCurveRoundedOnce() {
    Lineariser l =
        Lineariser.prepare(info(1, Alpha.NONE, Samples.Kind.SHORTS, 65535), SRGB, SRGB, 0);
    short[] codes = new short[65536];
    for (int i = 0; i < codes.length; i++) {
      codes[i] = (short) i;
    }
    Samples s = Samples.of(new Region(0, 0, 65536, 1), 1, codes);
    float[] r = new float[65536];
    float[] g = new float[65536];
    float[] b = new float[65536];
    l.row(s, 0, 0, 65536, r, g, b, null, 0);
    for (int i = 0; i < codes.length; i++) {
      assertThat(r[i]).isEqualTo((float) SRGB.curve(0).toLinear(i / 65535.0));
    }
    assertThat(g).isEqualTo(r);
    assertThat(b).isEqualTo(r);
    assertThat(r[0]).isEqualTo(0f);
    assertThat(r[65535]).isEqualTo(1f);
  }

  /** The values of IEC 61966-2-1's own formula at 8-bit codes; from memory: 188 is 0.5029. */
  @Test
  void eightBitMidTone() {
    Lineariser l = Lineariser.prepare(info(3, Alpha.NONE, Samples.Kind.BYTES, 255), SRGB, SRGB, 0);
    byte[] data = new byte[8 * 4 * 3];
    java.util.Arrays.fill(data, (byte) 188);
    float[][] planes = row(l, Samples.of(new Region(0, 3, 8, 7), 3, data), 5);
    Close.check("188", planes[1][4], 0.502886, 1e-6);
    assertThat(l.planes()).isEqualTo(3);
    assertThat(planes[3][4]).isEqualTo(GUARD);
  }

  @Test
  void matrixThenExposure() {
    Lineariser l =
        Lineariser.prepare(info(3, Alpha.NONE, Samples.Kind.SHORTS, 65535), P3, WIDE, 1.5);
    Samples s = Samples.of(new Region(0, 3, 8, 7), 3, shorts(96));
    double[] m = ColourSpace.matrix(P3, WIDE);
    for (int y = 3; y < 7; y++) {
      float[][] got = row(l, s, y);
      for (int x = 2; x < 7; x++) {
        double[] in = new double[3];
        for (int c = 0; c < 3; c++) {
          in[c] = P3.curve(c).toLinear(SamplesText.value(s, x, y, c) / 65535);
        }
        for (int c = 0; c < 3; c++) {
          double wanted =
              (m[3 * c] * in[0] + m[3 * c + 1] * in[1] + m[3 * c + 2] * in[2]) * Math.pow(2, 1.5);
          // Coefficients, inputs, three products, two sums, the factor and its product: 2^-24 each
          // on values up to 2.9.
          Close.check(x + "," + y + "," + c, got[c][x + 1], wanted, 2.9 * 10 * 0x1p-24);
        }
      }
    }
  }

  @Test
  void noStopsAndSamePrimariesLeaveTheTablesBits() {
    Lineariser plain =
        Lineariser.prepare(info(3, Alpha.NONE, Samples.Kind.SHORTS, 65535), SRGB, SRGB, 0);
    Samples s = Samples.of(new Region(0, 3, 8, 7), 3, shorts(96));
    float[][] got = row(plain, s, 4);
    for (int x = 2; x < 7; x++) {
      double code = SamplesText.value(s, x, 4, 2);
      assertThat(got[2][x + 1]).isEqualTo((float) SRGB.curve(2).toLinear(code / 65535));
    }
  }

  @Test
  void twelveBitsHaveTheirOwnFullScale() {
    Lineariser l =
        Lineariser.prepare(info(1, Alpha.NONE, Samples.Kind.SHORTS, 4095), SRGB, SRGB, 0);
    short[] data = new short[32];
    data[3] = 4095;
    data[4] = 2048;
    float[][] got = row(l, Samples.of(new Region(0, 3, 8, 7), 1, data), 3);
    assertThat(got[0][4]).isEqualTo(1f);
    assertThat(got[0][5]).isEqualTo((float) SRGB.curve(0).toLinear(2048 / 4095.0));
  }

  /**
   * White at alpha 64/255, stored (64, 64, 64, 64): white it is, with coverage 64/255 = 0.251
   * (common practice: alpha multiplies the encoded colour).
   */
  @Test
  void associatedAlphaIsDividedOutInTheEncodedDomain() {
    Lineariser l =
        Lineariser.prepare(info(4, Alpha.ASSOCIATED, Samples.Kind.BYTES, 255), SRGB, SRGB, 0);
    byte[] data = new byte[8 * 4 * 4];
    int[] pixel = {64, 64, 64, 64, 30, 64, 0, 128, 9, 9, 9, 0};
    for (int i = 0; i < pixel.length; i++) {
      data[8 + i] = (byte) pixel[i];
    }
    float[][] got = row(l, Samples.of(new Region(0, 3, 8, 7), 4, data), 3);
    assertThat(l.planes()).isEqualTo(4);
    assertThat(got[0][3]).isEqualTo(1f);
    assertThat(got[3][3]).isEqualTo((float) (64 / 255.0));
    // A straight line in a table of 65,536: the curve's bend between two entries is below 2^-30.
    Close.check("30/128", got[0][4], SRGB.curve(0).toLinear(30 / 128.0), 0x1p-24);
    Close.check("64/128", got[1][4], SRGB.curve(0).toLinear(0.5), 0x1p-24);
    assertThat(got[2][4]).isEqualTo(0f);
    assertThat(got[0][5]).isEqualTo(0f);
    assertThat(got[3][5]).isEqualTo(0f);
  }

  @Test
  void straightAlphaLeavesColoursAlone() {
    Lineariser l =
        Lineariser.prepare(info(2, Alpha.STRAIGHT, Samples.Kind.SHORTS, 65535), SRGB, SRGB, 0);
    short[] data = new short[64];
    data[4] = (short) 40000;
    data[5] = (short) 13107;
    float[][] got = row(l, Samples.of(new Region(0, 3, 8, 7), 2, data), 3);
    assertThat(got[1][3]).isEqualTo((float) SRGB.curve(0).toLinear(40000 / 65535.0));
    assertThat(got[3][3]).isEqualTo(0.2f);
  }

  @Test
  void everyFloatComesOutFinite() {
    FrameInfo info = info(1, Alpha.NONE, Samples.Kind.FLOATS, 1);
    float[] data = new float[32];
    float[] odd = {Float.NaN, Float.POSITIVE_INFINITY, Float.NEGATIVE_INFINITY, 1e30f, 18.75f};
    System.arraycopy(odd, 0, data, 2, 5);
    Samples s = Samples.of(new Region(0, 3, 8, 7), 1, data);
    ColourSpace linear = SRGB.linear();
    assertThat(linear.curve(0)).isSameAs(TransferCurve.identity());
    Lineariser l = Lineariser.prepare(info, linear, SRGB, 0);
    float[][] got = row(l, s, 3);
    assertThat(new float[] {got[0][3], got[0][4], got[0][5], got[0][6], got[0][7]})
        .containsExactly(0f, 65504f, -65504f, 65504f, 18.75f);
    assertThat(l.held()).isEqualTo(4);
    Lineariser curved = Lineariser.prepare(info, SRGB, SRGB, 0);
    float[][] bent = row(curved, s, 3);
    assertThat(bent[0][4]).isEqualTo(65504f);
    assertThat(bent[0][7]).isEqualTo((float) SRGB.curve(0).toLinear(18.75));
  }

  @Test
  void aGreyFrameIsNeutralInEverySpace() {
    Lineariser l = Lineariser.prepare(info(1, Alpha.NONE, Samples.Kind.BYTES, 255), P3, WIDE, 0.5);
    byte[] data = new byte[32];
    java.util.Arrays.fill(data, (byte) 99);
    float[][] got = row(l, Samples.of(new Region(0, 3, 8, 7), 1, data), 3);
    assertThat(got[0]).isEqualTo(got[1]).isEqualTo(got[2]);
  }
}
