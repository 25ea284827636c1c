package org.duskply.engine.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Two frames of one view against each other, to find whether they were developed alike. Where the
 * light was the same and the settings differed, the ratio of linear values is one number however
 * bright a place is; a tone curve makes it change with brightness, automatic exposure makes it
 * another number than the settings say.
 *
 * <p>Per sound lattice point above the floor: {@code r = log2(Y_f/Y_a)} and the brightness {@code m
 * = ½·(log2 Y_f + log2 Y_a)}, which, being symmetrical, does not make the noise of either frame
 * look like a trend. Points are counted in classes of half a stop of m. Only classes are used that
 * both limits (floor and white) leave whole at the overall ratio, with {@value #FEWEST} points at
 * least, half of them or more on one ratio: what a flash lights, unevenly, or two lights of
 * different strength share, says nothing about development.
 *
 * @param stops how much brighter the second frame is where most places agree
 * @param share of the places that agree on it, 0 to 1
 * @param classes what each class of brightness says, from dark to bright
 */
public record Development(double stops, double share, List<Brightness> classes) {
  /**
   * Fewest points of a class. With half of them within ±1/8 stop its median is within 0.03 stop.
   */
  static final int FEWEST = 64;

  /** Share of a class's points that must agree. */
  private static final double AGREED = 0.5;

  /** Stops between a class's edge and where its points begin to be cut off. */
  private static final double ROOM = 0.25;

  /** Fewest classes that make a trend, and the stops they must span between their middles. */
  private static final int TREND = 4;

  private static final double SPAN = 1.5;

  /**
   * A tone curve bends gently: no more than this share of the whole change may lie between two
   * neighbouring classes. A step is two lights that changed differently.
   */
  private static final double GENTLE = 0.6;

  private static final double LN2 = StrictMath.log(2);

  /**
   * A class of brightness.
   *
   * @param middle log2 of the linear brightness in its middle, 0 being white
   * @param stops the ratio that its points agree on
   */
  public record Brightness(double middle, double stops) {}

  /**
   * A ratio that changes with brightness.
   *
   * @param dark the darker of the two classes that differ most
   * @param bright the brighter
   */
  public record Trend(Brightness dark, Brightness bright) {
    /** By how many stops the ratio changes. */
    public double stops() {
      return Math.abs(bright.stops - dark.stops);
    }
  }

  /** Copies the list. */
  public Development {
    classes = List.copyOf(classes);
  }

  /**
   * Compares two frames.
   *
   * @param a one frame's points
   * @param f the other's, as many
   * @param luminance weights of red, green and blue
   * @param floor least linear brightness at which both files are fine enough to be believed
   * @return null if no place is sound in both
   */
  public static @Nullable Development compare(
      Lattice a, Lattice f, double[] luminance, double floor) {
    RatioHistogram all = new RatioHistogram();
    SortedMap<Integer, RatioHistogram> classes = new TreeMap<>();
    for (int i = 0; i < a.points(); i++) {
      double below = light(a, i, luminance);
      double above = light(f, i, luminance);
      if (a.sound(i) && f.sound(i) && below >= floor && above >= floor) {
        double darker = log2(below);
        double brighter = log2(above);
        all.add(brighter - darker);
        int index = (int) Math.floor(brighter + darker);
        classes.computeIfAbsent(index, k -> new RatioHistogram()).add(brighter - darker);
      }
    }
    if (all.total() == 0) {
      return null;
    }
    RatioHistogram.Peak peak = all.peak();
    return new Development(peak.stops(), peak.share(), agreeing(classes, peak, log2(floor)));
  }

  private static List<Brightness> agreeing(
      SortedMap<Integer, RatioHistogram> classes, RatioHistogram.Peak overall, double floor) {
    double half = Math.abs(overall.stops()) / 2 + ROOM;
    List<Brightness> agreeing = new ArrayList<>();
    classes.forEach(
        (index, histogram) -> {
          boolean whole = index / 2.0 >= floor + half && (index + 1) / 2.0 <= -half;
          if (whole && histogram.total() >= FEWEST) {
            RatioHistogram.Peak peak = histogram.peak();
            if (peak.share() >= AGREED) {
              agreeing.add(new Brightness((index + 0.5) / 2, peak.stops()));
            }
          }
        });
    return agreeing;
  }

  /**
   * How the ratio changes with brightness.
   *
   * @param allowed change in stops that means nothing
   * @return null if it does not change by more, if too little is known, or if it changes in a step
   */
  public @Nullable Trend trend(double allowed) {
    if (classes.size() < TREND
        || classes.get(classes.size() - 1).middle - classes.get(0).middle < SPAN) {
      return null;
    }
    Brightness least = classes.get(0);
    Brightness most = classes.get(0);
    double step = 0;
    for (int i = 1; i < classes.size(); i++) {
      Brightness here = classes.get(i);
      least = here.stops < least.stops ? here : least;
      most = here.stops > most.stops ? here : most;
      step = Math.max(step, Math.abs(here.stops - classes.get(i - 1).stops));
    }
    Trend trend = least.middle < most.middle ? new Trend(least, most) : new Trend(most, least);
    return trend.stops() > allowed && step <= GENTLE * trend.stops() ? trend : null;
  }

  private static double light(Lattice lattice, int i, double[] luminance) {
    return luminance[0] * lattice.plane(0)[i]
        + luminance[1] * lattice.plane(1)[i]
        + luminance[2] * lattice.plane(2)[i];
  }

  private static double log2(double x) {
    return StrictMath.log(x) / LN2;
  }
}
