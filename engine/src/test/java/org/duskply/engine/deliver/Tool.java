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

  /** Tags of a file by exiftool, a line each, numbers as they are stored. */
  static List<String> exif(Path file, String... tags) throws IOException, InterruptedException {
    return exif(List.of(file), tags).get(0);
  }

  /** As {@link #exif(Path, String...)}, of each of several files, by one process. */
  static List<List<String>> exif(List<Path> files, String... tags)
      throws IOException, InterruptedException {
    List<Object> command = new ArrayList<>(List.of("exiftool", "-s3", "-n"));
    for (String tag : tags) {
      command.add("-" + tag);
    }
    return ofEach(files, command).stream().map(said -> said.lines().toList()).toList();
  }

  /** What exiftool finds wrong with a file. */
  static String exifWarnings(Path file) throws IOException, InterruptedException {
    return exifWarnings(List.of(file)).get(0);
  }

  /** What exiftool finds wrong with each of several files, by one process. */
  static List<String> exifWarnings(List<Path> files) throws IOException, InterruptedException {
    return ofEach(files, List.of("exiftool", "-validate", "-warning", "-error", "-a", "-s"));
  }

  /** Of several files, exiftool begins each with a line of its name and counts them at the end. */
  private static List<String> ofEach(List<Path> files, List<Object> command)
      throws IOException, InterruptedException {
    List<Object> words = new ArrayList<>(command);
    words.addAll(files);
    String said = run(words.toArray());
    if (files.size() == 1) {
      return List.of(said);
    }
    String[] parts = said.split("(?m)^(======== | +[0-9]+ image files read).*\\R");
    assertThat(parts).as(said).hasSize(files.size() + 1);
    return List.of(parts).subList(1, parts.length);
  }
}
