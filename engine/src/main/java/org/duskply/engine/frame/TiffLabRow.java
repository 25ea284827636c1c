package org.duskply.engine.frame;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.duskply.engine.colour.Bradford;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.Matrix3;
import org.duskply.engine.colour.White;
import org.duskply.recipe.NamedSpace;

/**
 * Rows of CIE L*a*b* (TIFF 6.0, section 23) under D50, to linear light in the primaries of sRGB:
 *
 * <pre>
 *   L* = 100·v / (2^bits − 1)    a*, b* = v in signed whole steps (8 bits) or 256ths (16 bits)
 *   Y = f((L* + 16)/116)   X = Xn·f((L* + 16)/116 + a*&#47;500)   Z = Zn·f((L* + 16)/116 − b*&#47;200)
 *   f(t) = t³ above 6/29, else 3·(6/29)²·(t − 4/29)                                        (CIE 15)
 * </pre>
 *
 * Nothing is clipped. The form of ICC (tag 262 = 9) holds a* and b* with 128 added.
 */
final class TiffLabRow implements TiffRow {
  /** TIFF 6.0 leaves the white to a tag that hardly any file has; D50 is common practice. */
  private static final double[] WHITE = White.profileConnection();

  private static final double LINE = 6.0 / 29;

  private final RowLayout layout;
  private final ByteOrder order;
  private final boolean wide;
  private final boolean differences;
  private final boolean signed;
  private final double[] toLight;
  private int[] codes = new int[0];

  TiffLabRow(TiffPicture picture, RowLayout layout, ByteOrder order) {
    this.layout = layout;
    this.order = order;
    this.wide = picture.bits() == 16;
    this.differences = picture.predicted() == 2;
    this.signed = picture.photometric() == TiffPicture.CIE_LAB;
    ColourSpace srgb = ColourSpace.of(NamedSpace.SRGB);
    this.toLight =
        Matrix3.multiply(Matrix3.inverse(srgb.toXyz()), Bradford.between(WHITE, srgb.white()));
  }

  @Override
  public void row(byte[] packed, int from, int left, int pixels, Object into, int at) {
    int stored = layout.stored();
    int count = (left + pixels) * stored;
    codes = codes.length < count ? new int[count] : codes;
    ByteBuffer in = ByteBuffer.wrap(packed).order(order);
    for (int i = 0; i < count; i++) {
      codes[i] = wide ? in.getShort(from + 2 * i) & 0xffff : in.get(from + i) & 0xff;
      if (differences && i >= stored) {
        codes[i] = codes[i] + codes[i - stored] & (wide ? 0xffff : 0xff);
      }
    }
    float[] out = (float[]) into;
    for (int p = 0, i = left * stored, o = at;
        p < pixels;
        p++, i += stored, o += layout.channels()) {
      light(codes[i], chroma(codes[i + 1]), chroma(codes[i + 2]), out, o);
      if (layout.channels() > 3) {
        out[o + 3] = codes[i + layout.kept()[3]] / (wide ? 65535f : 255f);
      }
    }
  }

  private double chroma(int code) {
    if (signed) {
      return wide ? (short) code / 256.0 : (byte) code;
    }
    return wide ? code / 256.0 - 128 : code - 128;
  }

  private void light(int lightness, double a, double b, float[] out, int o) {
    double y = (lightness * 100.0 / (wide ? 65535 : 255) + 16) / 116;
    double bigX = WHITE[0] * cube(y + a / 500);
    double bigY = WHITE[1] * cube(y);
    double bigZ = WHITE[2] * cube(y - b / 200);
    for (int c = 0; c < 3; c++) {
      out[o + c] =
          (float) (toLight[3 * c] * bigX + toLight[3 * c + 1] * bigY + toLight[3 * c + 2] * bigZ);
    }
  }

  private static double cube(double root) {
    return root > LINE ? root * root * root : 3 * LINE * LINE * (root - 4.0 / 29);
  }
}
