package org.duskply.engine.colour;

/**
 * The decoding direction of a {@link TransferCurve} for files of floats, which no table can hold:
 * the very float to which {@link TransferCurve#toLinear}'s double rounds, mostly without taking its
 * {@link StrictMath} power, which makes a frame five times as slow.
 *
 * <p>Rounding never falls. So where what lies a little below the true value and a little above it
 * round to one float, that is the answer; where they do not, once in some 100,000 times, the
 * formula itself is asked.
 */
public final class DecodeCurve {
  // Twice what FinePower may be off: the power of the formula may be off by its last place too.
  private static final double SLACK = 2 * FinePower.ERROR;
  private static final double LOW = 1 - SLACK;
  private static final double HIGH = 1 + SLACK;

  private static final ParametricCurve NONE = new ParametricCurve(1, 1, 0, 0, 0, 0, 0);

  private final TransferCurve curve;
  private final float from; // where the power begins; NaN: nowhere
  private final double a;
  private final double b;
  private final double exponent;
  private final double lift;

  private DecodeCurve(TransferCurve curve, float from, ParametricCurve power) {
    this.curve = curve;
    this.from = from;
    this.a = power.a();
    this.b = power.b();
    this.exponent = power.gamma();
    this.lift = power.e();
  }

  /** The same as {@code curve}. */
  public static DecodeCurve of(TransferCurve curve) {
    if (curve instanceof ParametricCurve power && power.gamma() <= FinePower.MOST_EXPONENT) {
      float join = (float) power.join();
      float from = join < power.join() ? Math.nextUp(join) : join;
      return new DecodeCurve(curve, Math.max(from, 0), power);
    }
    return new DecodeCurve(curve, Float.NaN, NONE);
  }

  /** The linear value of an encoded one, of any finite float. */
  public float apply(float encoded) {
    if (curve == TransferCurve.identity()) {
      return encoded;
    }
    float quick = quick(encoded);
    return Float.isNaN(quick) ? (float) curve.toLinear(encoded) : quick;
  }

  /** The same, NaN where the quick way does not lead to it. */
  float quick(float encoded) {
    if (encoded >= from) {
      double base = a * encoded + b;
      if (base >= FinePower.LEAST && base <= FinePower.MOST) {
        double about = FinePower.of(base, exponent);
        float low = (float) (about * LOW + lift);
        float high = (float) (about * HIGH + lift);
        return low == high ? low : Float.NaN;
      }
    }
    return Float.NaN;
  }
}
