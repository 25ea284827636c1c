package org.duskply.benchmarks.sidebyside;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Runs other programs. */
final class Processes {
  private static final Path GNU_TIME = Path.of("/usr/bin/time");

  /** Last lines of what a program said, shown where it failed. */
  private static final int SHOWN = 5;

  private Processes() {}

  /** What a program took, and what it wrote to standard output. */
  record Timed(Cost cost, String output) {}

  /** Whether whole processes can be measured here. */
  static boolean canTime() {
    return Files.isExecutable(GNU_TIME) && answer(GNU_TIME.toString(), "--version").contains("GNU");
  }

  /**
   * Runs a program to its end and measures it.
   *
   * @param folder where it runs
   * @throws Refusal if it fails
   */
  static Timed time(List<String> command, Path folder) {
    try {
      Path numbers = Files.createTempFile("duskply-time", ".txt");
      try {
        List<String> timed = new ArrayList<>();
        timed.addAll(List.of(GNU_TIME.toString(), "-o", numbers.toString(), "-f", Cost.FORMAT));
        timed.addAll(command);
        String output = run(timed, folder);
        return new Timed(Cost.of(Files.readString(numbers, StandardCharsets.UTF_8)), output);
      } finally {
        Files.deleteIfExists(numbers);
      }
    } catch (IOException e) {
      throw new Refusal("The temporary folder cannot be written to.", e);
    }
  }

  /**
   * Runs a program to its end.
   *
   * @return what it wrote to standard output
   * @throws Refusal if it fails
   */
  static String run(List<String> command, Path folder) {
    Ended ended = end(command, folder);
    if (ended.status != 0) {
      throw new Refusal(
          String.join(" ", command)
              + " ended with status "
              + ended.status
              + ":\n"
              + last(ended.errors));
    }
    return ended.output;
  }

  /** What a program writes; nothing where it is not there or fails. */
  static String answer(String... command) {
    try {
      Ended ended = end(List.of(command), Path.of("."));
      return ended.status == 0 ? ended.output.strip() : "";
    } catch (Refusal e) {
      return "";
    }
  }

  private record Ended(int status, String output, String errors) {}

  private static Ended end(List<String> command, Path folder) {
    try {
      Path out = Files.createTempFile("duskply-out", ".txt");
      Path errors = Files.createTempFile("duskply-errors", ".txt");
      try {
        Process process =
            new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectOutput(out.toFile())
                .redirectError(errors.toFile())
                .start();
        int status = await(process);
        return new Ended(status, Files.readString(out), Files.readString(errors));
      } finally {
        Files.deleteIfExists(out);
        Files.deleteIfExists(errors);
      }
    } catch (IOException e) {
      throw new Refusal(command.get(0) + " cannot be run.", e);
    }
  }

  private static int await(Process process) {
    try {
      return process.waitFor();
    } catch (InterruptedException e) {
      process.destroy();
      Thread.currentThread().interrupt();
      throw new Refusal("The measurement was interrupted.", e);
    }
  }

  private static String last(String text) {
    List<String> lines = text.lines().toList();
    return lines.stream().skip(Math.max(0, lines.size() - SHOWN)).collect(Collectors.joining("\n"));
  }
}
