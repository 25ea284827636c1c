package org.duskply.benchmarks.sidebyside;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The tables of a measurement, as Markdown. */
final class Report {
  private static final double MEGABYTE = 1e6;

  private Report() {}

  /** What each program took: the median of all rounds, with the least and the greatest. */
  static String results(List<Result> results) {
    List<List<String>> rows = new ArrayList<>();
    for (Result result : results) {
      rows.add(
          List.of(
              result.workload(),
              result.program(),
              spread("%.2f", result.series(Cost.Measure.WALL)),
              spread("%.2f", result.series(Cost.Measure.PROCESSOR)),
              spread("%.0f", result.series(Cost.Measure.PEAK)),
              String.format(Locale.ROOT, "%.1f", result.bytes() / MEGABYTE),
              Double.isNaN(result.difference())
                  ? ""
                  : String.format(Locale.ROOT, "%.4f", result.difference())));
    }
    return table(
        List.of("workload", "program", "wall, s", "processor, s", "peak, MB", "file, MB", "ΔE00"),
        rows);
  }

  /** The ratios of medians, where both sides were measured; nothing if none were. */
  static String ratios(List<Target> targets, List<Result> results) {
    List<List<String>> rows = new ArrayList<>();
    for (Target target : targets) {
      Map<Cost.Measure, Double> ratios = target.ratios(results);
      if (!ratios.isEmpty()) {
        rows.add(
            List.of(
                target.what(),
                target.against(),
                ratio(target, ratios, Cost.Measure.WALL),
                ratio(target, ratios, Cost.Measure.PROCESSOR),
                ratio(target, ratios, Cost.Measure.PEAK)));
      }
    }
    return rows.isEmpty()
        ? ""
        : table(List.of("workload", "against", "wall", "processor", "peak memory"), rows);
  }

  /** A table with its columns' names. */
  static String table(List<String> head, List<List<String>> rows) {
    StringBuilder text = new StringBuilder();
    row(text, head);
    row(text, head.stream().map(h -> "---").toList());
    rows.forEach(r -> row(text, r));
    return text.toString();
  }

  private static void row(StringBuilder text, List<String> cells) {
    text.append("| ").append(String.join(" | ", cells)).append(" |\n");
  }

  /** A median with the least and the greatest, each as {@code format} has it. */
  static String spread(String format, Series series) {
    return String.format(
        Locale.ROOT,
        format + " (" + format + " to " + format + ")",
        series.median(),
        series.least(),
        series.greatest());
  }

  private static String ratio(
      Target target, Map<Cost.Measure, Double> ratios, Cost.Measure measure) {
    Double ratio = ratios.get(measure);
    Double most = target.most().get(measure);
    if (ratio == null || most == null) {
      return "";
    }
    return judged(ratio, most);
  }

  /** A ratio beside the most that it should be. */
  static String judged(double ratio, double most) {
    return String.format(
        Locale.ROOT, "%.3f (≤ %.2f: %s)", ratio, most, ratio <= most ? "met" : "missed");
  }
}
