package org.duskply.benchmarks.sidebyside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Ratios are those of medians, each beside its target. */
class ReportTest {
  private static final Target TARGET =
      new Target(
          "the work",
          "W24",
          Program.OURS,
          "W24",
          Program.VIPS,
          Map.of(Cost.Measure.WALL, 0.25, Cost.Measure.PEAK, 0.30));

  private static final Result OURS =
      new Result("W24", Program.OURS, costs(9, 8, 40), 102_800_000, Double.NaN);
  private static final Result VIPS =
      new Result("W24", Program.VIPS, costs(30, 90, 36), 105_700_000, 0.0742);

  /** Each with a processor time of twice the wall time and as many megabytes. */
  private static List<Cost> costs(double... walls) {
    return Arrays.stream(walls).mapToObj(w -> new Cost(w, 2 * w, w * 1e6)).toList();
  }

  @Test
  void ratiosOfMedians() {
    Map<Cost.Measure, Double> ratios = TARGET.ratios(List.of(OURS, VIPS));
    assertThat(ratios).containsOnlyKeys(Cost.Measure.WALL, Cost.Measure.PEAK);
    assertThat(ratios.get(Cost.Measure.WALL)).isCloseTo(9 / 36.0, within(1e-15));
  }

  @Test
  void noRatioWithoutBothSides() {
    assertThat(TARGET.ratios(List.of(OURS))).isEmpty();
    assertThat(Report.ratios(List.of(TARGET), List.of(OURS))).isEmpty();
  }

  @Test
  void tables() {
    assertThat(Report.results(List.of(OURS, VIPS)))
        .isEqualTo(
            """
            | workload | program | wall, s | processor, s | peak, MB | file, MB | ΔE00 |
            | --- | --- | --- | --- | --- | --- | --- |
            | W24 | Duskply | 9.00 (8.00 to 40.00) | 18.00 (16.00 to 80.00) | 9 (8 to 40) | 102.8 |  |
            | W24 | libvips | 36.00 (30.00 to 90.00) | 72.00 (60.00 to 180.00) | 36 (30 to 90) | 105.7 | 0.0742 |
            """);
    assertThat(Report.ratios(List.of(TARGET), List.of(OURS, VIPS)))
        .isEqualTo(
            """
            | workload | against | wall | processor | peak memory |
            | --- | --- | --- | --- | --- |
            | the work | libvips | 0.250 (≤ 0.25: met) |  | 0.250 (≤ 0.30: met) |
            """);
    assertThat(Report.judged(0.2501, 0.25)).isEqualTo("0.250 (≤ 0.25: missed)");
  }

  @Test
  void everyTargetNamesAProgramAndAWorkloadThatIsMeasured() {
    List<String> programs =
        List.of(Program.OURS, Program.OURS_AT_SIX, Program.FLOOR, Program.VIPS, Program.OPENCV);
    List<String> workloads =
        org.duskply.benchmarks.workload.Workload.all().stream().map(w -> w.name()).toList();
    assertThat(Target.ALL)
        .allSatisfy(
            target -> {
              assertThat(programs).contains(target.program(), target.byProgram());
              assertThat(workloads).contains(target.workload(), target.byWorkload());
              assertThat(target.most()).isNotEmpty();
            });
  }
}
