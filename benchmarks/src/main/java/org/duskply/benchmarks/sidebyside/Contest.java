package org.duskply.benchmarks.sidebyside;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;

/** Runs programs in turn on one workload, each round all of them, and compares their pictures. */
final class Contest {
  /** Above this two pictures do not show the same work. */
  static final double MOST_DIFFERENCE = 0.1;

  private final String workload;
  private final List<Program> programs;
  private final Path pictures;
  private final Consumer<String> told;

  /**
   * A contest.
   *
   * @param programs the first is ours
   * @param pictures the folder that keeps the picture of each; made if it is not there
   * @param told hears of each run
   */
  Contest(String workload, List<Program> programs, Path pictures, Consumer<String> told) {
    this.workload = workload;
    this.programs = programs;
    this.pictures = pictures;
    this.told = told;
  }

  /**
   * Runs it.
   *
   * @return one result a program
   * @throws Refusal if a program fails, or its picture is not ours
   */
  List<Result> run(int rounds) {
    List<List<Cost>> costs = new ArrayList<>();
    programs.forEach(program -> costs.add(new ArrayList<>()));
    for (int round = 1; round <= rounds; round++) {
      for (int p = 0; p < programs.size(); p++) {
        Program program = programs.get(p);
        Cost cost = Processes.time(program.command(), program.folder()).cost();
        keep(program);
        costs.get(p).add(cost);
        told.accept(told(workload, round, program.name(), cost));
      }
    }
    List<Result> results = new ArrayList<>();
    for (int p = 0; p < programs.size(); p++) {
      Path kept = kept(programs.get(p).name());
      double difference = p == 0 ? Double.NaN : compare(programs.get(p).name());
      results.add(
          new Result(workload, programs.get(p).name(), costs.get(p), bytes(kept), difference));
    }
    return results;
  }

  /** Where a program's picture is kept. */
  Path kept(String program) {
    return pictures.resolve(program.replaceAll("\\W+", "-") + ".tif");
  }

  /** A run in a line. */
  static String told(String workload, int round, String program, Cost cost) {
    return String.format(
        Locale.ROOT,
        "%s, round %d: %s %.2f s, %.2f s of processor, %.0f MB",
        workload,
        round,
        program,
        Cost.Measure.WALL.of(cost),
        Cost.Measure.PROCESSOR.of(cost),
        Cost.Measure.PEAK.of(cost));
  }

  /** The size of a file that was made. */
  static long bytes(Path file) {
    try {
      return Files.size(file);
    } catch (IOException e) {
      throw new Refusal(file + " is gone.", e);
    }
  }

  private double compare(String program) {
    double difference = PictureDifference.mean(kept(programs.get(0).name()), kept(program));
    if (!(difference < MOST_DIFFERENCE)) {
      throw new Refusal(
          String.format(
              Locale.ROOT,
              "%s: the picture of %s is %.3f of CIEDE2000 away from ours in the mean, so they did not do the same work.",
              workload,
              program,
              difference));
    }
    return difference;
  }

  private void keep(Program program) {
    try {
      Files.createDirectories(pictures);
      Files.move(program.picture(), kept(program.name()), StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      throw new Refusal(program.name() + " left no picture at " + program.picture() + ".", e);
    }
  }
}
