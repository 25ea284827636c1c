package org.duskply.engine.adjust;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.duskply.engine.pixel.Encoded;
import org.duskply.engine.pixel.Segments;
import org.duskply.recipe.adjust.Axis;

/**
 * A curve of brightness in double, never falling, and the values at which its pieces meet. Several
 * done one after the other become one {@link Segments} for the pixels.
 *
 * @param curve defined for every number
 * @param corners where it is not smooth
 */
record Tone(DoubleUnaryOperator curve, List<Double> corners) {
  /** Beyond any float, far from overflow: where powers of powers are held. */
  private static final double FAR = 1e60;

  /** Linear light to the encoded axis. */
  private static final Tone ENCODE =
      new Tone(Encoded::encodeExactly, List.of(-Encoded.LINEAR_KNEE, Encoded.LINEAR_KNEE));

  /** The encoded axis to linear light. */
  private static final Tone DECODE =
      new Tone(Encoded::decodeExactly, List.of(-Encoded.ENCODED_KNEE, Encoded.ENCODED_KNEE));

  /** One curve of linear values for {@code tones} done in order on an axis. */
  static Segments segments(List<Tone> tones, Axis axis) {
    return axis == Axis.LINEAR ? segments(tones) : segments(onEncodedAxis(tones));
  }

  private static List<Tone> onEncodedAxis(List<Tone> tones) {
    List<Tone> all = new ArrayList<>();
    all.add(ENCODE);
    all.addAll(tones);
    all.add(DECODE);
    return all;
  }

  private static Segments segments(List<Tone> tones) {
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
