package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Programs that read pictures and that are no part of this project. */
final class Tool {
  private Tool() {}

  /** What a program prints, both streams; without it the test is skipped and says so. */
  static String run(Object... command) throws IOException, InterruptedException {
    List<String> words = new ArrayList<>();
    for (Object word : command) {
      words.add(word.toString());
    }
    Process process;
    try {
      process = new ProcessBuilder(words).redirectErrorStream(true).start();
    } catch (IOException absent) {
      System.err.println("SKIPPED, not checked against an outside reader: no " + words.get(0));
      return abort("no " + words.get(0));
    }
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as("%s: %s", words, said).isZero();
    return said;
  }

  /** Tags by exiftool, a line each, numbers as they are stored. */
  static List<String> exif(Path file, String... tags) throws IOException, InterruptedException {
    List<Object> command = new ArrayList<>(List.of("exiftool", "-s3", "-n"));
    for (String tag : tags) {
      command.add("-" + tag);
    }
    command.add(file);
    return run(command.toArray()).lines().toList();
  }

  /** What exiftool finds wrong with a file. */
  static String exifWarnings(Path file) throws IOException, InterruptedException {
    return run("exiftool", "-validate", "-warning", "-error", "-a", "-s", file);
  }
}
