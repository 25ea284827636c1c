package org.duskply.benchmarks.sidebyside;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.duskply.benchmarks.workload.MakeWorkload;
import org.duskply.benchmarks.workload.Workload;

/**
 * Times the workloads: {@code SideBySide REPOSITORY OPTIONS}. Each workload's programs run in turn,
 * as whole processes; their pictures must agree. Prints the tables and writes them down.
 */
public final class SideBySide {
  private static final Set<String> WITH_VIPS =
      Set.of("W24", "W24-full", "W24-lzw", "W24-jpeg", "small");
  private static final Set<String> WITH_ALL = Set.of("W24");

  private final Path root;
  private final Options options;
  private final OwnProgram own;

  SideBySide(Path root, Options options, OwnProgram own) {
    this.root = root;
    this.options = options;
    this.own = own;
  }

  /** Measures what the arguments ask for. */
  public static void main(String[] arguments) {
    try {
      Path root = Path.of(arguments[0]);
      List<String> words = Arrays.asList(arguments).subList(1, arguments.length);
      Path jar = root.resolve("engine/target/duskply-app.jar");
      new SideBySide(root, Options.of(root, words), OwnProgram.ofJar(jar)).measure();
    } catch (Refusal e) {
      System.err.println(e.getMessage());
      System.exit(1);
    }
  }

  /** Measures, prints and writes; answers where the results were written. */
  Path measure() {
    if (!Processes.canTime()) {
      throw new Refusal("GNU time is not at /usr/bin/time; install the package `time`.");
    }
    Peers peers = options.peers() == null ? null : new Peers(options.peers());
    if (peers != null) {
      peers.build();
    }
    List<Result> results = new ArrayList<>();
    for (Workload workload : Workload.all()) {
      if (options.asksFor(workload.name()) && !skipped(workload)) {
        results.addAll(measure(workload, peers));
      }
    }
    String text = Report.results(results) + "\n" + Report.ratios(Target.ALL, results);
    System.out.println(text);
    return write(text, peers);
  }

  /** The smallest is there to try things out and is measured only by its name. */
  private boolean skipped(Workload workload) {
    return options.only().isEmpty() && workload.name().equals("small");
  }

  private List<Result> measure(Workload workload, Peers peers) {
    Path folder = options.work().resolve(workload.name());
    make(workload, folder);
    List<Program> programs = new ArrayList<>();
    programs.add(own.render(folder));
    if (WITH_ALL.contains(workload.name()) && own.takesLevel()) {
      programs.add(own.renderAtSix(folder));
    }
    if (peers != null && WITH_VIPS.contains(workload.name())) {
      programs.add(peers.vips(folder));
    }
    if (peers != null && WITH_ALL.contains(workload.name())) {
      programs.add(peers.openCv(folder));
    }
    return new Contest(workload.name(), programs, folder.resolve("pictures"), System.out::println)
        .run(options.rounds());
  }

  private static void make(Workload workload, Path folder) {
    try {
      MakeWorkload.make(workload, folder);
    } catch (IOException e) {
      throw new Refusal("The workload cannot be made in " + folder + ".", e);
    }
  }

  private Path write(String tables, Peers peers) {
    Path file =
        options.only().isEmpty()
            ? root.resolve("benchmarks/RESULTS.md")
            : options.work().resolve("RESULTS.md");
    StringBuilder text = new StringBuilder("# Side by side\n\n");
    Machine.lines(root).forEach(line -> text.append("- ").append(line).append('\n'));
    if (peers != null) {
      text.append("- Libraries: ").append(String.join(", ", peers.versions())).append('\n');
    }
    text.append('\n').append(tables);
    try {
      Files.writeString(file, text, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return file;
  }
}
