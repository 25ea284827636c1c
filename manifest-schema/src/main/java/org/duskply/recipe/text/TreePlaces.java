package org.duskply.recipe.text;

import java.util.List;
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
    Tree here = root;
    for (String segment : segments(path)) {
      Tree next = below(here, segment);
      if (next == null) {
        return here.spot();
      }
      here = next;
    }
    return here.spot();
  }

  /** The part at {@code path}; null where there is none. */
  public @Nullable Tree part(String path) {
    Tree here = root;
    for (String segment : segments(path)) {
      here = here == null ? null : below(here, segment);
    }
    return here;
  }

  private static List<String> segments(String path) {
    return path.isEmpty() ? List.of() : List.of(path.split("/", -1));
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
