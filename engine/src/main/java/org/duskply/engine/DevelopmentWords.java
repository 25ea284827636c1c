package org.duskply.engine;

import java.util.Locale;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.measure.Development;
import org.duskply.recipe.NamedSpace;

/** What is said of frames that were not developed alike. */
final class DevelopmentWords {
  private DevelopmentWords() {}

  /**
   * A ratio that changes with brightness.
   *
   * @param overall how much brighter the second frame is, in stops
   * @param others how many other pairs show the same
   */
  static String curved(
      String first, String second, double overall, Development.Trend trend, int others) {
    double sign = overall < 0 ? -1 : 1;
    return String.format(
            Locale.ROOT,
            "Between %s and %s the exposure ratio changes from %.2f stops in the darker tones"
                + " (around %.2f from black 0 to white 1) to %.2f in the brighter (around %.2f):"
                + " a tone curve was baked in when they were developed, and their light does not add"
                + " up. Develop all frames without one.",
            first,
            second,
            sign * trend.dark().stops(),
            encoded(trend.dark()),
            sign * trend.bright().stops(),
            encoded(trend.bright()))
        + others(others);
  }

  /** A ratio that is not what the camera's settings say. */
  static String shifted(String first, String second, double measured, double expected, int others) {
    return String.format(
            Locale.ROOT,
            "By the camera's settings %s should be %s %s, but where the two agree it is %s: the"
                + " exposure was changed when they were developed, perhaps automatically, or the"
                + " light was another.",
            second,
            than(expected),
            first,
            stops(measured))
        + others(others);
  }

  private static String than(double stops) {
    return Math.abs(stops) < 0.005 ? "as bright as" : stops(stops) + " than";
  }

  private static String stops(double stops) {
    return Math.abs(stops) < 0.005
        ? "equally bright"
        : String.format(
            Locale.ROOT, "%.2f stops %s", Math.abs(stops), stops < 0 ? "darker" : "brighter");
  }

  private static String others(int count) {
    return count == 0
        ? ""
        : " " + count + (count == 1 ? " other pair shows it too." : " other pairs show it too.");
  }

  private static double encoded(Development.Brightness tone) {
    return ColourSpace.of(NamedSpace.SRGB).curve(0).toEncoded(StrictMath.pow(2, tone.middle()));
  }
}
