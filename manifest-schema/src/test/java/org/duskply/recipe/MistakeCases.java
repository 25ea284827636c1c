package org.duskply.recipe;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * The cases of {@code mistakes.txt} and its like: a title after {@code ==}, the text of a recipe,
 * then after {@code --} what is said about it. A text that begins with {@code @} has the three
 * lines of a recipe without fault in place of that sign.
 */
final class MistakeCases {
  static final String SOUND = "duskply: 1\nbase: dusk\nframes: { dusk: a.tif }";

  /** Basics, then whole recipes: frames among each other, finish, alternates, files. */
  private static final List<String> FILES = List.of("mistakes.txt", "mistakes-whole.txt");

  private MistakeCases() {}

  /**
   * One case.
   *
   * @param title what it shows
   * @param text the recipe
   * @param expected a line for each problem, {@code line:column sentence}
   */
  record Case(String title, String text, List<String> expected) {
    @Override
    public String toString() {
      return title;
    }
  }

  static List<Case> all() {
    List<Case> cases = new ArrayList<>();
    FILES.forEach(file -> cases.addAll(in(file)));
    return cases;
  }

  /** The cases of one file. */
  static List<Case> in(String name) {
    try (InputStream in = MistakeCases.class.getResourceAsStream(name)) {
      String file = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
      List<Case> cases = new ArrayList<>();
      for (String block : file.split("(?m)^== ")) {
        if (!block.isBlank()) {
          cases.add(one(block));
        }
      }
      return cases;
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Case one(String block) {
    int title = block.indexOf('\n');
    String[] halves = block.substring(title + 1).split("(?m)^--$\n?", 2);
    String text = halves[0].startsWith("@\n") ? SOUND + halves[0].substring(1) : halves[0];
    return new Case(block.substring(0, title), text, halves[1].lines().toList());
  }

  /** A line for a problem as the file of cases has it. */
  static String line(Problem problem) {
    String notice = problem.isNotice() ? "notice: " : "";
    return problem.place().line()
        + ":"
        + problem.place().column()
        + " "
        + notice
        + problem.sentence();
  }
}
