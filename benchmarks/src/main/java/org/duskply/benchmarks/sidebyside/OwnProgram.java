package org.duskply.benchmarks.sidebyside;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.duskply.benchmarks.workload.Workload;

/**
 * How our own program is run, by the JDK that runs the measurement.
 *
 * @param where the words after the flags that say where its classes are
 */
record OwnProgram(List<String> where) {
  /**
   * What Java is told for a rendering: a heap that is collected by one thread, since there are two
   * and both have work, and whose young part has room for all that a few bands hold, so that little
   * of it is carried into the old one.
   */
  static final List<String> FLAGS =
      List.of("-Xmx1g", "-XX:+UseSerialGC", "-Xmn330m", "-XX:SurvivorRatio=1");

  private static final String DEFLATE_LEVEL = "--deflate-level";

  /** The command line in one jar. */
  static OwnProgram ofJar(Path jar) {
    return new OwnProgram(List.of("-jar", jar.toString()));
  }

  /** Renders a workload into a folder below its own. */
  Program render(Workload workload, Path folder) {
    return render(Program.OURS, workload, folder, List.of());
  }

  /** The same with the deflate level that other libraries take when they are not told. */
  Program renderAtSix(Workload workload, Path folder) {
    return render(Program.OURS_AT_SIX, workload, folder, List.of(DEFLATE_LEVEL, "6"));
  }

  /** Whether the program knows how to be told its deflate level. */
  boolean takesLevel() {
    List<String> help = java(FLAGS);
    help.addAll(where);
    help.addAll(List.of("render", "--help"));
    return Processes.run(help, Path.of(".")).contains(DEFLATE_LEVEL);
  }

  /** What a class of the benchmarks does, in a process of its own. */
  static List<String> command(List<String> flags, Class<?> main, Object... arguments) {
    List<String> command = java(flags);
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), main.getName()));
    for (Object argument : arguments) {
      command.add(argument.toString());
    }
    return command;
  }

  private Program render(String name, Workload workload, Path folder, List<String> options) {
    List<String> command = java(FLAGS);
    command.addAll(where);
    command.addAll(List.of("render", "recipe.yaml", "--out", "ours"));
    command.addAll(options);
    return new Program(name, command, folder, folder.resolve("ours").resolve("out.tif"));
  }

  private static List<String> java(List<String> flags) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(flags);
    return command;
  }
}
