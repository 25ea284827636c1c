package org.duskply.engine.testing.reference;

import java.util.ArrayList;
import java.util.List;

/**
 * A colour in plain double, and how far floats that were meant to be it may be from it.
 *
 * <p>What a function makes of that distance is measured, not derived: at every corner of the box of
 * colours that the inputs may be. Boxes are a few units of the last place wide, within which the
 * functions here are straight lines or straight on either side of a fold; a fold that points up is
 * no higher than the greater of its corners, and one that points down lies between them. What bends
 * beyond that is less than a hundredth.
 *
 * @param colour red, green and blue
 * @param off of each
 */
public record Estimate(double[] colour, double[] off) {
  /** Half a unit of the last place of 1: what one rounding to float may change, relatively. */
  public static final double UNIT = 0x1p-24;

  private static final double BENT = 1.01;

  /** A function of one colour. */
  public interface Function {
    double[] of(double[] colour);
  }

  /** A function of two colours. */
  public interface Combination {
    double[] of(double[] below, double[] frame);
  }

  /** How far the engine's result of exact inputs may be from the formula's, channel by channel. */
  public interface Own {
    double[] of(double[] want);
  }

  /** A colour that the engine has to the last bit. */
  public static Estimate exact(double red, double green, double blue) {
    return new Estimate(new double[] {red, green, blue}, new double[3]);
  }

  /** What a function makes of it. */
  public Estimate through(Function function, Own own) {
    return combined(exact(0, 0, 0), (below, frame) -> function.of(below), own);
  }

  /** What a function makes of it and another. */
  public Estimate combined(Estimate frame, Combination function, Own own) {
    double[] want = function.of(colour, frame.colour);
    double[] spread = new double[3];
    List<Integer> open = new ArrayList<>();
    for (int c = 0; c < 6; c++) {
      if ((c < 3 ? off[c] : frame.off[c - 3]) > 0) {
        open.add(c);
      }
    }
    for (int corner = 0; corner < 1 << open.size(); corner++) {
      double[] b = colour.clone();
      double[] f = frame.colour.clone();
      for (int i = 0; i < open.size(); i++) {
        int c = open.get(i);
        int sign = (corner >> i & 1) == 0 ? -1 : 1;
        if (c < 3) {
          b[c] += sign * off[c];
        } else {
          f[c - 3] += sign * frame.off[c - 3];
        }
      }
      double[] there = function.of(b, f);
      for (int c = 0; c < 3; c++) {
        spread[c] = Math.max(spread[c], Math.abs(there[c] - want[c]));
      }
    }
    double[] more = own.of(want);
    for (int c = 0; c < 3; c++) {
      spread[c] = BENT * spread[c] + more[c];
    }
    return new Estimate(want, spread);
  }

  /** The engine's mix of a step into this. */
  public Estimate mixed(Estimate step, double weight) {
    if (weight == 0) {
      return this;
    }
    double[] out = new double[3];
    double[] wide = new double[3];
    for (int c = 0; c < 3; c++) {
      double difference = step.colour[c] - colour[c];
      out[c] = weight == 1 ? step.colour[c] : colour[c] + weight * difference;
      // Opacity and weight rounded once each, the difference and the product; then the sum.
      double rounded = UNIT * (4 * weight * Math.abs(difference) + Math.abs(out[c]));
      wide[c] =
          weight == 1
              ? step.off[c]
              : BENT * ((1 - weight) * off[c] + weight * step.off[c]) + rounded;
    }
    return new Estimate(out, wide);
  }

  /** The greatest size among its channels. */
  static double greatest(double[] colour) {
    return Math.max(Math.abs(colour[0]), Math.max(Math.abs(colour[1]), Math.abs(colour[2])));
  }
}
