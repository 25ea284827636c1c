package org.duskply.benchmarks.sidebyside;

import java.util.ArrayList;
import java.util.List;

/** The file that tells what was measured, of what, and how to measure it again. */
final class Results {
  private static final String HEAD =
      """
      # Side by side

      Whole composites, each program a whole process, in turn, by GNU time: `benchmarks/side-by-side` wrote this. Given is the median
      of all rounds, and in brackets the least and the greatest. Processor time is that of the program and of the system. Every frame
      was read once before its first round and nothing was dropped, so frames come from the page cache. Each library's picture was
      compared with ours (mean CIEDE2000, below 0.1). The workloads are described in
      [`Workload`](src/main/java/org/duskply/benchmarks/workload/Workload.java).

      """;

  private static final String AGAIN =
      """

      ## Again

          apt-get install -y time make gcc pkg-config libvips-dev python3-opencv python3-numpy
          benchmarks/side-by-side --peers DIR --work DIR

      `--peers` is the folder of the other libraries' programs, `peer_vips.c` with its `Makefile` and `peer_cv.py`: each takes a plan,
      the workload's `plan.tsv`, and writes `peer.tif`. `--work` is where the workloads are made, 30 GB of frames, or found. A quiet
      machine of two cores takes half an hour, and as long again to make the frames. `--only W24,W24-lzw` measures some alone.
      """;

  private final List<Result> results = new ArrayList<>();
  private final List<String> failures = new ArrayList<>();
  private String edits = "";

  void add(List<Result> more) {
    results.addAll(more);
  }

  void addFailure(String workload) {
    failures.add(workload);
  }

  /** Whether all that was asked for was measured. */
  boolean complete() {
    return failures.isEmpty();
  }

  void addEdits(String table) {
    edits = table;
  }

  /** The tables. */
  String tables() {
    StringBuilder text = new StringBuilder();
    if (!failures.isEmpty()) {
      text.append("Not measured, because something failed: ")
          .append(String.join(", ", failures))
          .append(".\n\n");
    }
    if (!results.isEmpty()) {
      text.append("## What each took\n\n").append(Report.results(results));
    }
    String ratios = Report.ratios(Target.ALL, results);
    if (!ratios.isEmpty()) {
      text.append("\n## Ratios of medians\n\n").append(ratios);
      text.append(
          "\nThe floor decodes once what our rendering decodes and encodes the picture once.\n");
    }
    if (!edits.isEmpty()) {
      text.append("\n## Edits\n\n").append(edits);
    }
    return text.toString();
  }

  /**
   * The whole file.
   *
   * @param machine one sentence a line
   */
  String text(List<String> machine) {
    StringBuilder text = new StringBuilder(HEAD);
    machine.forEach(line -> text.append("- ").append(line).append('\n'));
    return text.append('\n').append(tables()).append(AGAIN).toString();
  }
}
