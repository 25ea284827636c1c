package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Shape;
import org.jspecify.annotations.Nullable;

/** Records with some of their keys given other values, which a program or an alternate holds. */
public final class Changed {
  private Changed() {}

  /**
   * A record with some of its keys given other values.
   *
   * @param root what can be met anywhere in a recipe
   * @param keys new values by key, as a recipe would write them
   * @param path what the record is called in problems
   * @param problems told where a key or a value does not fit the record; null is then returned
   */
  public static <T extends Record> @Nullable T record(
      Shape<?> root, T record, Map<String, Object> keys, String path, Problems problems) {
    Tree.Mapping changes = (Tree.Mapping) tree(keys);
    TreePlaces places = new TreePlaces(problems.source(), changes);
    Binder binder = new Binder(root, places, problems);
    return ChangeBinder.of(binder, record, changes).bind(changes, path);
  }

  /**
   * Plain values as a tree without places.
   *
   * @throws IllegalArgumentException if a value is none of text, number, truth value, null, list
   *     and map, or they stand too deep in each other
   */
  static Tree tree(@Nullable Object value) {
    return tree(value, 0);
  }

  private static Tree tree(@Nullable Object value, int depth) {
    if (depth > Limits.DEPTH) {
      throw new IllegalArgumentException("values stand too deep in each other");
    }
    if (value instanceof Map<?, ?> map) {
      List<Tree.Entry> entries = new ArrayList<>();
      map.forEach(
          (key, part) ->
              entries.add(new Tree.Entry((String) key, Spot.START, tree(part, depth + 1))));
      return new Tree.Mapping(Spot.START, entries);
    }
    if (value instanceof List<?> list) {
      List<Tree> members = new ArrayList<>();
      list.forEach(part -> members.add(tree(part, depth + 1)));
      return new Tree.Listing(Spot.START, members);
    }
    if (value instanceof String text) {
      return new Tree.Scalar(Spot.START, text, Tree.Form.TEXT);
    }
    if (value == null || value instanceof Boolean || value instanceof Number) {
      return new Tree.Scalar(Spot.START, bare(value), Tree.Form.BARE);
    }
    throw new IllegalArgumentException("no recipe holds a " + value.getClass().getSimpleName());
  }

  private static String bare(@Nullable Object value) {
    return value instanceof Double || value instanceof Float
        ? Es6Number.text(((Number) value).doubleValue())
        : String.valueOf(value);
  }
}
