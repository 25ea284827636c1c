package org.duskply.benchmarks.sidebyside;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How one result should compare with another: a ratio of medians of one run.
 *
 * @param what the row's name
 * @param workload whose result
 * @param program whose result
 * @param byWorkload the workload of the result that divides it
 * @param byProgram the program of the result that divides it
 * @param most the greatest ratio of each number that counts
 */
record Target(
    String what,
    String workload,
    String program,
    String byWorkload,
    String byProgram,
    Map<Cost.Measure, Double> most) {
  private static final String W24 = "W24";

  /** All of them. */
  static final List<Target> ALL =
      List.of(
          peer(W24, W24, Program.OURS, Program.VIPS, 0.25, 0.30),
          peer("W24, both at deflate level 6", W24, Program.OURS_AT_SIX, Program.VIPS, 0.38, 0.30),
          peer(W24, W24, Program.OURS, Program.OPENCV, 0.12, 0.40),
          peer("W24-full", "W24-full", Program.OURS, Program.VIPS, 0.45, 0.30),
          peer("W24-full-zlib", "W24-full-zlib", Program.OURS, Program.VIPS, 0.45, 0.30),
          peer("W24-lzw", "W24-lzw", Program.OURS, Program.VIPS, 0.35, 0.30),
          peer("W24-jpeg", "W24-jpeg", Program.OURS, Program.VIPS, 0.35, 0.45),
          own("W100", 3.0, 1.10),
          own("W24-100MP", 4.6, 1.5),
          new Target(
              W24, W24, Program.OURS, W24, Program.FLOOR, Map.of(Cost.Measure.PROCESSOR, 1.35)));

  private static Target peer(
      String what, String workload, String ours, String peer, double wall, double peak) {
    return new Target(
        what,
        workload,
        ours,
        workload,
        peer,
        Map.of(Cost.Measure.WALL, wall, Cost.Measure.PEAK, peak));
  }

  private static Target own(String workload, double wall, double peak) {
    return new Target(
        workload,
        workload,
        Program.OURS,
        W24,
        Program.OURS,
        Map.of(Cost.Measure.WALL, wall, Cost.Measure.PEAK, peak));
  }

  /** The ratios, where both results are there; else nothing. */
  Map<Cost.Measure, Double> ratios(List<Result> results) {
    Map<Cost.Measure, Double> ratios = new EnumMap<>(Cost.Measure.class);
    Optional<Result> upper = find(results, workload, program);
    Optional<Result> lower = find(results, byWorkload, byProgram);
    if (upper.isPresent() && lower.isPresent()) {
      for (Cost.Measure measure : most.keySet()) {
        ratios.put(
            measure, upper.get().series(measure).median() / lower.get().series(measure).median());
      }
    }
    return ratios;
  }

  /** What divides, for people. */
  String against() {
    return workload.equals(byWorkload) ? byProgram : "own " + byWorkload;
  }

  private static Optional<Result> find(List<Result> results, String workload, String program) {
    return results.stream()
        .filter(r -> r.workload().equals(workload) && r.program().equals(program))
        .findFirst();
  }
}
