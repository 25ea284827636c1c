package org.duskply.engine.adjust;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.pixel.Encoded;
import org.duskply.engine.pixel.Segments;
import org.duskply.recipe.adjust.Axis;

/**
 * A curve of brightness in double, never falling, and the values at which its pieces meet. Several
 * done one after the other become one {@link Segments} for the pixels, or a few.
 *
 * @param curve defined for every number
 * @param corners where it is not smooth
 * @param steepAtNought whether it rises from 0 more steeply than any line, as a root does
 */
record Tone(DoubleUnaryOperator curve, List<Double> corners, boolean steepAtNought) {
  /** A little above 0, on any axis. */
  private static final double LITTLE = 0x1p-20;

  /** Beyond any float, far from overflow: where powers of powers are held. */
  private static final double FAR = 1e60;

  /** Linear light to the encoded axis. */
  private static final Tone ENCODE =
      new Tone(Encoded::encodeExactly, List.of(-Encoded.LINEAR_KNEE, Encoded.LINEAR_KNEE));

  /** The encoded axis to linear light. */
  private static final Tone DECODE =
      new Tone(Encoded::decodeExactly, List.of(-Encoded.ENCODED_KNEE, Encoded.ENCODED_KNEE));

  /** A tone that is nowhere steeper than some line. */
  Tone(DoubleUnaryOperator curve, List<Double> corners) {
    this(curve, corners, false);
  }

  /** From linear values by way of {@code tones}, done in order on an axis, to linear values. */
  static Segments[] thereAndBack(List<Tone> tones, Axis axis) {
    List<Tone> all = onAxis(tones, axis);
    if (axis == Axis.ENCODED) {
      all.add(DECODE);
    }
    return tables(all);
  }

  /**
   * From linear values by way of {@code tones}, done in order on an axis, to values on that axis.
   */
  static Segments[] there(List<Tone> tones, Axis axis) {
    return tables(onAxis(tones, axis));
  }

  private static List<Tone> onAxis(List<Tone> tones, Axis axis) {
    List<Tone> all = new ArrayList<>();
    if (axis == Axis.ENCODED) {
      all.add(ENCODE);
    }
    all.addAll(tones);
    return all;
  }

  /**
   * As few tables as keep their precision. They are fine about 0 alone: a tone that is steep there
   * begins another where those before it bring some other value to 0.
   */
  private static Segments[] tables(List<Tone> tones) {
    List<Segments> tables = new ArrayList<>();
    int begin = 0;
    for (int i = 1; i < tones.size(); i++) {
      if (tones.get(i).steepAtNought && moveNought(tones.subList(begin, i))) {
        tables.add(table(tones.subList(begin, i)));
        begin = i;
      }
    }
    tables.add(table(tones.subList(begin, tones.size())));
    return tables.toArray(Segments[]::new);
  }

  private static boolean moveNought(List<Tone> tones) {
    double atNought = 0;
    double above = LITTLE;
    for (Tone tone : tones) {
      atNought = tone.curve.applyAsDouble(atNought);
      above = tone.curve.applyAsDouble(above);
    }
    return atNought != 0 || above <= 0;
  }

  private static Segments table(List<Tone> tones) {
    DoubleUnaryOperator whole = DoubleUnaryOperator.identity();
    List<Float> knots = new ArrayList<>();
    for (Tone tone : tones) {
      for (double corner : tone.corners) {
        knots.add(firstAtLeast(corner, whole));
      }
      whole = whole.andThen(tone.curve).andThen(v -> Math.max(-FAR, Math.min(FAR, v)));
    }
    float[] array = new float[knots.size()];
    for (int i = 0; i < array.length; i++) {
      array[i] = knots.get(i);
    }
    return Segments.of(whole, array);
  }

  /** The least float within ±{@link Segments#TOP} at which the curve has reached {@code level}. */
  private static float firstAtLeast(double level, DoubleUnaryOperator curve) {
    int low = inOrder(Float.floatToIntBits(-Segments.TOP));
    int high = inOrder(Float.floatToIntBits(Segments.TOP));
    while (low < high) {
      int middle = (int) (((long) low + high) >> 1);
      if (curve.applyAsDouble(Float.intBitsToFloat(inOrder(middle))) >= level) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return Float.intBitsToFloat(inOrder(low));
  }

  /** The bits of a float to a number that rises with it, and back. */
  private static int inOrder(int bits) {
    return bits ^ ((bits >> 31) & 0x7fffffff);
  }
}
