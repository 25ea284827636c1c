package org.duskply.engine.adjust;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.pixel.Encoded;
import org.duskply.engine.pixel.Segments;
import org.duskply.recipe.adjust.Axis;

/**
 * Consecutive tones of one channel as one curve of linear light. The value stays on the encoded
 * axis from one tone to the next for as long as they ask for it; all of it is exact until the curve
 * is prepared, so that a value is rounded once however long the run.
 */
final class ToneRun {
  private static final int TOP_RANK = Float.floatToIntBits(Segments.TOP);
  private static final double FAR = 1e60; // beyond any float, far from overflow

  private final List<Tone> tones;

  ToneRun(List<Tone> tones) {
    this.tones = List.copyOf(tones);
  }

  /** The run prepared for pixels. */
  Segments prepare() {
    List<Float> knots = new ArrayList<>();
    Axis axis = Axis.LINEAR;
    for (int i = 0; i < tones.size(); i++) {
      Tone tone = tones.get(i);
      if (tone.axis() != axis) {
        double knee = axis == Axis.LINEAR ? Encoded.LINEAR_KNEE : Encoded.ENCODED_KNEE;
        addKnots(knots, i, axis, -knee, knee);
        axis = tone.axis();
      }
      addKnots(knots, i, axis, tone.knots());
    }
    if (axis == Axis.ENCODED) {
      addKnots(knots, tones.size(), axis, -Encoded.ENCODED_KNEE, Encoded.ENCODED_KNEE);
    }
    float[] array = new float[knots.size()];
    for (int i = 0; i < array.length; i++) {
      array[i] = knots.get(i);
    }
    return Segments.of(x -> through(x, tones.size(), Axis.LINEAR), array);
  }

  /** A linear value after the first {@code count} tones, on {@code wanted}. */
  private double through(double x, int count, Axis wanted) {
    double value = x;
    Axis axis = Axis.LINEAR;
    for (int i = 0; i < count; i++) {
      Tone tone = tones.get(i);
      value = tone.curve().applyAsDouble(moved(value, axis, tone.axis()));
      value = Math.max(-FAR, Math.min(FAR, value));
      axis = tone.axis();
    }
    return moved(value, axis, wanted);
  }

  private static double moved(double value, Axis from, Axis to) {
    if (from == to) {
      return value;
    }
    return to == Axis.ENCODED ? Encoded.encodeExactly(value) : Encoded.decodeExactly(value);
  }

  private void addKnots(List<Float> knots, int count, Axis axis, double... onAxis) {
    for (double knot : onAxis) {
      if (through(-Segments.TOP, count, axis) < knot
          && through(Segments.TOP, count, axis) >= knot) {
        knots.add(leastThatReaches(knot, count, axis));
      }
    }
  }

  /** The least linear value that the first {@code count} tones bring up to {@code knot}. */
  private float leastThatReaches(double knot, int count, Axis axis) {
    int below = -TOP_RANK;
    int reaching = TOP_RANK;
    while (reaching - (long) below > 1) {
      int middle = (int) (((long) below + reaching) >> 1);
      if (through(ranked(middle), count, axis) >= knot) {
        reaching = middle;
      } else {
        below = middle;
      }
    }
    return ranked(reaching);
  }

  /** Floats in order: 0 for 0, 1 for the least above it, −1 for its negative. */
  private static float ranked(int rank) {
    return rank < 0 ? -Float.intBitsToFloat(-rank) : Float.intBitsToFloat(rank);
  }
}
