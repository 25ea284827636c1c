package org.duskply.engine.pixel;

/**
 * The encoded axis, on which brightness is read off a screen: the curve of IEC 61966-2-1 (sRGB),
 * continued above 1 by its own formula and odd below 0, and its inverse back to linear light.
 *
 * <pre>
 * E(x) = 12.92·x                     for |x| ≤ 0.0031308
 *        1.055·x^(1/2.4) − 0.055     above
 * L(v) = v/12.92                     for |v| ≤ 0.04045
 *        ((v + 0.055)/1.055)^2.4     above
 * </pre>
 *
 * <p>The float forms agree with the formulas, in encoded values, within 0.02/65535 on 0…1 and 2⁻²⁰
 * of the value from there to {@link Segments#TOP}.
 */
public final class Encoded {
  /** The linear value up to which the curve is straight. */
  public static final double LINEAR_KNEE = 0.0031308;

  /** The encoded value up to which the inverse is straight. */
  public static final double ENCODED_KNEE = 0.04045;

  private static final double SLOPE = 12.92;
  private static final double OFFSET = 0.055;
  private static final double POWER = 2.4;

  private static final Segments ENCODE = Segments.of(Encoded::encodeExactly, knees(LINEAR_KNEE));
  private static final Segments DECODE = Segments.of(Encoded::decodeExactly, knees(ENCODED_KNEE));

  private Encoded() {}

  /** Linear values {@code from} up to {@code to} to encoded ones. */
  public static void encode(float[] v, int from, int to) {
    ENCODE.apply(v, from, to);
  }

  /** Encoded values {@code from} up to {@code to} to linear ones. */
  public static void decode(float[] v, int from, int to) {
    DECODE.apply(v, from, to);
  }

  /** The encoded value of linear {@code x}. */
  public static float encode(float x) {
    return ENCODE.apply(x);
  }

  /** The linear value of encoded {@code v}. */
  public static float decode(float v) {
    return DECODE.apply(v);
  }

  /** The formula itself; for preparing, not for pixels. */
  public static double encodeExactly(double x) {
    double size = Math.abs(x);
    double v =
        size <= LINEAR_KNEE
            ? SLOPE * size
            : (1 + OFFSET) * StrictMath.pow(size, 1 / POWER) - OFFSET;
    return Math.copySign(v, x);
  }

  /** The inverse formula itself; for preparing, not for pixels. */
  public static double decodeExactly(double v) {
    double size = Math.abs(v);
    double x =
        size <= ENCODED_KNEE ? size / SLOPE : StrictMath.pow((size + OFFSET) / (1 + OFFSET), POWER);
    return Math.copySign(x, v);
  }

  /** Where the curve's pieces begin on either side of 0: above the knee, and above its negative. */
  private static float[] knees(double knee) {
    float above = (float) knee;
    if (above <= knee) {
      above = Math.nextUp(above);
    }
    return new float[] {above, Math.nextUp(-above)};
  }
}
