package org.duskply.recipe.text;

import org.duskply.recipe.Place;
import org.duskply.recipe.Places;
import org.jspecify.annotations.Nullable;

/** The places of a recipe that was read from a text: paths are followed through its tree. */
public final class TreePlaces implements Places {
  private final Source source;
  private final Tree root;

  /** Keeps the text and its tree. */
  public TreePlaces(Source source, Tree root) {
    this.source = source;
    this.root = root;
  }

  @Override
  public Place at(String path) {
    return source.place(spot(path));
  }

  @Override
  public String snippet(Place place) {
    return source.snippet(place.line(), place.column());
  }

  /** The spot of the part at {@code path}, or of the nearest part around it. */
  public Spot spot(String path) {
    return follow(path).tree().spot();
  }

  /** The part at {@code path}; null where there is none. */
  public @Nullable Tree part(String path) {
    Reached reached = follow(path);
    return reached.whole() ? reached.tree() : null;
  }

  /** How far a path leads. */
  private record Reached(Tree tree, boolean whole) {}

  private Reached follow(String path) {
    Tree here = root;
    int from = 0;
    while (from < path.length()) {
      // A key may hold a slash itself, where it names a step in a group.
      int end = segmentEnd(path, from);
      Tree next = below(here, path.substring(from, end));
      while (next == null && end < path.length()) {
        end = segmentEnd(path, end + 1);
        next = below(here, path.substring(from, end));
      }
      if (next == null) {
        return new Reached(here, false);
      }
      here = next;
      from = end + 1;
    }
    return new Reached(here, true);
  }

  private static int segmentEnd(String path, int from) {
    int slash = path.indexOf('/', from);
    return slash < 0 ? path.length() : slash;
  }

  private static @Nullable Tree below(Tree tree, String segment) {
    if (tree instanceof Tree.Mapping mapping) {
      Tree.Entry entry = mapping.entry(segment);
      return entry == null ? null : entry.value();
    }
    if (tree instanceof Tree.Listing listing && segment.matches("#[0-9]{1,8}")) {
      int index = Integer.parseInt(segment.substring(1)) - 1;
      return index >= 0 && index < listing.members().size() ? listing.members().get(index) : null;
    }
    return null;
  }

  /** Two sets of places are never told apart: recipes are equal by what they say. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Places;
  }

  @Override
  public int hashCode() {
    return 0;
  }
}
