package org.duskply.benchmarks.sidebyside;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.duskply.benchmarks.workload.MakeWorkload;
import org.duskply.benchmarks.workload.Workload;
import org.jspecify.annotations.Nullable;

/**
 * Times the workloads: {@code SideBySide REPOSITORY OPTIONS}, see {@link Options}. Each workload's
 * programs run in turn, as whole processes; their pictures must agree. Prints the tables and writes
 * them down.
 */
public final class SideBySide {
  /** The workload on which more is measured than the time of a rendering. */
  private static final String FIRST = "W24";

  private static final Set<String> WITH_VIPS =
      Set.of(FIRST, "W24-full", "W24-full-zlib", "W24-lzw", "W24-jpeg", "small");

  private final Path root;
  private final Options options;
  private final OwnProgram own;
  private final @Nullable Peers peers;
  private final Results results = new Results();

  SideBySide(Path root, Options options, OwnProgram own) {
    this.root = root;
    this.options = options;
    this.own = own;
    this.peers = options.peers() == null ? null : new Peers(options.peers());
  }

  /** Measures what the arguments ask for. */
  public static void main(String[] arguments) {
    try {
      Path root = Path.of(arguments[0]);
      Options options = Options.of(root, Arrays.asList(arguments).subList(1, arguments.length));
      Path jar = root.resolve("engine/target/duskply-app.jar");
      SideBySide measurement = new SideBySide(root, options, OwnProgram.ofJar(jar));
      measurement.measure();
      System.exit(measurement.results.complete() ? 0 : 1);
    } catch (Refusal e) {
      System.err.println(e.getMessage());
      System.exit(1);
    }
  }

  /**
   * Measures, prints and writes.
   *
   * @return the file that the results were written to
   * @throws Refusal if nothing can be measured at all
   */
  Path measure() {
    if (!Processes.canTime()) {
      throw new Refusal("GNU time is not at /usr/bin/time; install the package called time.");
    }
    if (peers != null) {
      peers.build();
    }
    for (Workload workload : Workload.all()) {
      measure(workload.name(), () -> measure(workload));
    }
    measure(Options.EDIT, this::edits);
    System.out.println(results.tables());
    return write();
  }

  /** Measures one workload, if it is asked for; where that fails the others go on. */
  private void measure(String workload, Runnable work) {
    if (options.asksFor(workload)) {
      try {
        work.run();
      } catch (Refusal e) {
        tell(workload + ": " + e.getMessage());
        results.addFailure(workload);
      }
    }
  }

  private void measure(Workload workload) {
    Path folder = made(workload);
    Contest contest =
        new Contest(
            workload.name(), programs(workload, folder), folder.resolve("pictures"), this::tell);
    results.add(contest.run(options.rounds()));
    if (workload.name().equals(FIRST)) {
      results.add(List.of(floor(folder, contest.kept(Program.OURS))));
    }
  }

  private List<Program> programs(Workload workload, Path folder) {
    boolean first = workload.name().equals(FIRST);
    List<Program> programs = new ArrayList<>();
    programs.add(own.render(workload, folder));
    if (first && own.takesLevel()) {
      programs.add(own.renderAtSix(workload, folder));
    }
    if (peers != null && WITH_VIPS.contains(workload.name())) {
      programs.add(peers.vips(folder));
    }
    if (peers != null && first) {
      programs.add(peers.openCv(folder));
    }
    return programs;
  }

  private Result floor(Path folder, Path picture) {
    Path file = folder.resolve("pictures").resolve("floor.tif");
    List<String> command =
        OwnProgram.command(
            OwnProgram.FLAGS, Floor.class, folder.resolve("recipe.yaml"), picture, file);
    List<Cost> costs = new ArrayList<>();
    for (int round = 1; round <= options.rounds(); round++) {
      Processes.Timed timed = Processes.time(command, folder);
      double uncounted = Double.parseDouble(timed.output().strip());
      tell(Contest.told(FIRST, round, Program.FLOOR, timed.cost()) + ", not counted: " + uncounted);
      costs.add(timed.cost().without(uncounted));
    }
    return new Result(FIRST, Program.FLOOR, costs, Contest.bytes(file), Double.NaN);
  }

  private void edits() {
    Path folder = made(Workload.called(FIRST).orElseThrow());
    List<String> command =
        OwnProgram.command(
            Edits.FLAGS,
            Edits.class,
            folder.resolve("recipe.yaml"),
            folder.resolve("edits"),
            options.rounds());
    Processes.Timed timed = Processes.time(command, folder);
    results.addEdits(
        timed.output()
            + String.format(
                Locale.ROOT,
                "%nThe process, `java %s`, with its %d rounds and the one before them took %.0f MB at most.%n",
                String.join(" ", Edits.FLAGS),
                options.rounds(),
                Cost.Measure.PEAK.of(timed.cost())));
  }

  /** A workload's folder, with every frame in the page cache. */
  private Path made(Workload workload) {
    Path folder = options.work().resolve(workload.name());
    try {
      tell(workload.name() + ": making what is missing, reading every frame once");
      MakeWorkload.make(workload, folder);
      for (int frame = 0; frame < workload.frames(); frame++) {
        try (InputStream in = Files.newInputStream(folder.resolve(workload.file(frame)))) {
          in.transferTo(OutputStream.nullOutputStream());
        }
      }
      return folder;
    } catch (IOException e) {
      throw new Refusal("The workload cannot be made in " + folder + ": " + e.getMessage(), e);
    }
  }

  private Path write() {
    List<String> machine = new ArrayList<>(Machine.lines(root));
    machine.add("Our flags: `java %s`".formatted(String.join(" ", OwnProgram.FLAGS)));
    if (peers != null) {
      machine.add("Libraries: " + String.join(", ", peers.versions()));
    }
    Path file =
        options.only().isEmpty()
            ? root.resolve("benchmarks").resolve("RESULTS.md")
            : options.work().resolve("RESULTS.md");
    try {
      Files.writeString(file, results.text(machine), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new Refusal(file + " cannot be written.", e);
    }
    tell("Written: " + file);
    return file;
  }

  private void tell(String line) {
    System.out.println(line);
  }
}
