package org.duskply.engine.colour;

import org.jspecify.annotations.Nullable;

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

  private final TransferCurve curve;
  private final @Nullable ParametricCurve power; // what can be quick
  private final float from; // where it begins

  private DecodeCurve(TransferCurve curve) {
    this.curve = curve;
    this.power =
        curve instanceof ParametricCurve p && p.gamma() <= FinePower.MOST_EXPONENT ? p : null;
    this.from = power == null ? Float.NaN : EncodeCurve.leastNotBelow(Math.max(power.join(), 0));
  }

  /** The same as {@code curve}. */
  public static DecodeCurve of(TransferCurve curve) {
    return new DecodeCurve(curve);
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
    ParametricCurve p = power;
    if (p != null && encoded >= from) {
      double base = p.a() * encoded + p.b();
      if (base >= FinePower.LEAST && base <= FinePower.MOST) {
        double about = FinePower.of(base, p.gamma());
        float low = (float) (about * LOW + p.e());
        float high = (float) (about * HIGH + p.e());
        return low == high ? low : Float.NaN;
      }
    }
    return Float.NaN;
  }
}
