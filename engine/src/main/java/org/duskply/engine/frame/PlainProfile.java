package org.duskply.engine.frame;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.duskply.engine.colour.IccReader;
import org.duskply.engine.colour.Matrix3;

/**
 * Makes the smallest ICC profile (ICC.1:2010) that says what a file says in other words: primaries
 * and white as chromaticities, and one exponent. So there is one way from a file's colours to a
 * colour space, through {@link IccReader}.
 */
final class PlainProfile {
  /** White, red, green, blue of BT.709 and sRGB: x and y of each. */
  static final double[] SRGB_CHROMATICITIES = {0.3127, 0.3290, 0.64, 0.33, 0.30, 0.60, 0.15, 0.06};

  /** D50 as the profile connection space has it (ICC.1:2010, 7.2.16). */
  private static final double[] D50 = {0.9642, 1, 0.8249};

  /** Bradford's cone responses (ICC.1:2010, annex E). */
  private static final double[] BRADFORD = {
    0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296
  };

  private static final int HEADER = 128;
  private static final int CURVE_BYTES = 16;
  private static final int COLOUR_BYTES = 20;
  private static final int MATRIX_BYTES = 44;

  private PlainProfile() {}

  /**
   * An RGB profile.
   *
   * @param xy white, red, green, blue: x and y of each
   * @param exponent {@code linear = encoded^exponent}
   * @throws ArithmeticException if the chromaticities are those of no colour space
   */
  static byte[] rgb(double[] xy, double exponent) {
    double[] toXyz = toXyz(xy);
    double[] white = Matrix3.apply(toXyz, 1, 1, 1);
    double[] adaptation = adaptation(white);
    double[] columns = Matrix3.multiply(adaptation, toXyz);
    String[] names = {"rXYZ", "gXYZ", "bXYZ", "chad", "rTRC", "gTRC", "bTRC"};
    int[] sizes = {
      COLOUR_BYTES, COLOUR_BYTES, COLOUR_BYTES, MATRIX_BYTES, CURVE_BYTES, CURVE_BYTES, CURVE_BYTES
    };
    ByteBuffer out = start("RGB ", names, sizes, true);
    for (int c = 0; c < 3; c++) {
      text(out, "XYZ ").putInt(0);
      fixed(out, columns[c]);
      fixed(out, columns[3 + c]);
      fixed(out, columns[6 + c]);
    }
    text(out, "sf32").putInt(0);
    for (double a : adaptation) {
      fixed(out, a);
    }
    curve(out, exponent);
    return out.array();
  }

  /** A grey profile. */
  static byte[] grey(double exponent) {
    ByteBuffer out = start("GRAY", new String[] {"kTRC"}, new int[] {CURVE_BYTES}, false);
    curve(out, exponent);
    return out.array();
  }

  /** Header and tag table; tags of a shared curve point to the same place. */
  private static ByteBuffer start(String model, String[] names, int[] sizes, boolean shared) {
    int table = 4 + 12 * names.length;
    int size = HEADER + table;
    int[] places = new int[names.length];
    for (int t = 0; t < names.length; t++) {
      boolean same = shared && t > 0 && names[t].endsWith("TRC") && names[t - 1].endsWith("TRC");
      places[t] = same ? places[t - 1] : size;
      size += same ? 0 : sizes[t];
    }
    ByteBuffer out = ByteBuffer.allocate(size);
    out.putInt(size).putInt(0).putInt(0x04200000);
    text(text(text(out, "mntr"), model), "XYZ ");
    out.position(36);
    text(out, "acsp");
    out.position(68);
    for (double d : D50) {
      fixed(out, d);
    }
    out.position(HEADER);
    out.putInt(names.length);
    for (int t = 0; t < names.length; t++) {
      text(out, names[t]).putInt(places[t]).putInt(sizes[t]);
    }
    return out;
  }

  private static void curve(ByteBuffer out, double exponent) {
    text(out, "para").putInt(0).putShort((short) 0).putShort((short) 0);
    fixed(out, exponent);
  }

  private static ByteBuffer text(ByteBuffer out, String signature) {
    return out.put(signature.getBytes(StandardCharsets.US_ASCII));
  }

  private static void fixed(ByteBuffer out, double v) {
    out.putInt((int) StrictMath.round(v * 65536));
  }

  /** Linear RGB to XYZ with Y of white = 1 (SMPTE RP 177). */
  private static double[] toXyz(double... xy) {
    double[] primaries = new double[9];
    for (int c = 0; c < 3; c++) {
      double x = xy[2 + 2 * c];
      double y = xy[3 + 2 * c];
      primaries[c] = x;
      primaries[3 + c] = y;
      primaries[6 + c] = 1 - x - y;
    }
    double[] white = {xy[0] / xy[1], 1, (1 - xy[0] - xy[1]) / xy[1]};
    if (!(xy[1] > 0) || !(StrictMath.abs(Matrix3.determinant(primaries)) > 1e-6)) {
      throw new ArithmeticException("no colour space");
    }
    double[] amounts = Matrix3.apply(Matrix3.inverse(primaries), white);
    return Matrix3.multiply(primaries, Matrix3.diagonal(amounts[0], amounts[1], amounts[2]));
  }

  private static double[] adaptation(double... white) {
    double[] from = Matrix3.apply(BRADFORD, white);
    double[] to = Matrix3.apply(BRADFORD, D50);
    double[] scale = Matrix3.diagonal(to[0] / from[0], to[1] / from[1], to[2] / from[2]);
    return Matrix3.multiply(Matrix3.inverse(BRADFORD), Matrix3.multiply(scale, BRADFORD));
  }
}
