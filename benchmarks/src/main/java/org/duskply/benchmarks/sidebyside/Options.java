package org.duskply.benchmarks.sidebyside;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.duskply.benchmarks.workload.Workload;
import org.jspecify.annotations.Nullable;

/**
 * What is asked for on the command line.
 *
 * @param peers the folder of the other libraries' programs; absent: ours runs alone
 * @param work the folder of the workloads
 * @param rounds how often each program runs
 * @param only the workloads; empty: all
 */
record Options(@Nullable Path peers, Path work, int rounds, List<String> only) {
  static final String USAGE =
      """
      side-by-side [--peers DIR] [--work DIR] [--rounds N] [--only NAME,NAME]
        --peers DIR   where peer_vips.c and peer_cv.py are; without it our program runs alone
        --work DIR    where the workloads are, or will be made: 30 GB; default: benchmarks/out
        --rounds N    how often each program runs a workload; default: 3
        --only NAMES  these workloads alone; the results then go to DIR/RESULTS.md""";

  /** The workload that is no rendering. */
  static final String EDIT = "edit";

  /** The workload that is there to try things out, and is measured only by its name. */
  private static final String SMALL = "small";

  private static final int ROUNDS = 3;

  /**
   * Reads a command line.
   *
   * @param root the repository's folder
   * @throws Refusal if it is not understood
   */
  static Options of(Path root, List<String> arguments) {
    Path peers = null;
    Path work = root.resolve("benchmarks").resolve("out");
    int rounds = ROUNDS;
    List<String> only = new ArrayList<>();
    for (int i = 0; i < arguments.size(); i += 2) {
      if (i + 1 == arguments.size()) {
        throw new Refusal(USAGE);
      }
      String value = arguments.get(i + 1);
      switch (arguments.get(i)) {
        case "--peers" -> peers = Path.of(value).toAbsolutePath().normalize();
        case "--work" -> work = Path.of(value);
        case "--rounds" -> rounds = rounds(value);
        case "--only" -> only.addAll(known(List.of(value.split(","))));
        default -> throw new Refusal(USAGE);
      }
    }
    return new Options(peers, work.toAbsolutePath().normalize(), rounds, List.copyOf(only));
  }

  /** Whether a workload is asked for. */
  boolean asksFor(String workload) {
    return only.isEmpty() ? !workload.equals(SMALL) : only.contains(workload);
  }

  private static List<String> known(List<String> names) {
    List<String> all = new ArrayList<>(Workload.all().stream().map(Workload::name).toList());
    all.add(EDIT);
    for (String name : names) {
      if (!all.contains(name)) {
        throw new Refusal(
            "There is no workload " + name + "; there are " + String.join(", ", all) + ".");
      }
    }
    return names;
  }

  private static int rounds(String text) {
    if (!text.matches("[1-9]\\d{0,3}")) {
      throw new Refusal(USAGE);
    }
    return Integer.parseInt(text);
  }
}
