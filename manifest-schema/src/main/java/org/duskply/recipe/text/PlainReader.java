package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Takes the user's own keys as they are: text, true and false, {@code Long}, {@code Double},
 * nothing (null), lists and maps in the order of the text, not modifiable.
 */
final class PlainReader {
  private final Problems problems;

  PlainReader(Problems problems) {
    this.problems = problems;
  }

  @Nullable Object plain(Tree tree, String path) {
    if (tree instanceof Tree.Mapping mapping) {
      Map<String, @Nullable Object> map = new LinkedHashMap<>();
      mapping.entries().forEach(e -> map.put(e.key(), plain(e.value(), path)));
      return Collections.unmodifiableMap(map);
    }
    if (tree instanceof Tree.Listing listing) {
      List<@Nullable Object> list = new ArrayList<>();
      listing.members().forEach(member -> list.add(plain(member, path)));
      return Collections.unmodifiableList(list);
    }
    return tree instanceof Tree.Scalar scalar ? scalar(scalar, path) : null;
  }

  private @Nullable Object scalar(Tree.Scalar scalar, String path) {
    String text = scalar.text();
    if (scalar.form() == Tree.Form.TEXT) {
      return text;
    }
    if (text.isEmpty()) {
      problems.add(
          scalar.spot(),
          path,
          Words.quoted(path) + " has no value; give it one or delete the key",
          "nothing",
          "a value");
      return null;
    }
    if (scalar.empty()) {
      return null;
    }
    if (scalar.flag()) {
      return Boolean.valueOf(text);
    }
    return NumberText.matches(text) ? number(scalar, path) : text;
  }

  private Object number(Tree.Scalar scalar, String path) {
    String text = scalar.text();
    try {
      return Long.valueOf(text);
    } catch (NumberFormatException e) {
      double value = NumberText.value(text);
      if (!Double.isFinite(value)) {
        problems.add(
            scalar.spot(),
            path,
            Words.quoted(text) + " is too large for a number; put it in quotes",
            text,
            "a number");
      }
      return value;
    }
  }
}
