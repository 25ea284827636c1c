package org.duskply.recipe.text;

import java.util.Objects;

/** Reads the examples that Shapes carry. */
final class Examples {
  private Examples() {}

  /**
   * The value that an example shows.
   *
   * @throws IllegalArgumentException if it is no YAML value
   */
  static Object value(String example) {
    Source source = new Source("example.yaml", example);
    Problems problems = new Problems(source);
    Tree tree = TextReader.read(source, problems);
    Object value = tree == null ? null : new PlainReader(problems).plain(tree, "example");
    if (problems.any()) {
      throw new IllegalArgumentException("an example is no YAML: " + example);
    }
    return Objects.requireNonNull(value);
  }
}
