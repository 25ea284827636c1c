package org.duskply.recipe;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The places of an alternate: a key that it sets stands where it sets it. */
final class AlternatePlaces implements Places {
  private final Places main;
  private final Map<String, String> pathOfKey = new LinkedHashMap<>();

  AlternatePlaces(Recipe recipe, String name, StepNames names) {
    this.main = recipe.places();
    Alternate alternate = recipe.alternates().get(name);
    if (alternate != null) {
      alternate
          .set()
          .forEach(
              (step, keys) ->
                  names.path(step).ifPresent(path -> add(path, name, step, keys.keySet())));
    }
  }

  private void add(String path, String name, String step, Iterable<String> keys) {
    for (String key : keys) {
      pathOfKey.put(path + "/" + key, "alternates/" + name + "/set/" + step + "/" + key);
    }
  }

  @Override
  public Place at(String path) {
    for (int end = path.length(); end > 0; end = path.lastIndexOf('/', end - 1)) {
      String set = pathOfKey.get(path.substring(0, end));
      if (set != null) {
        return main.at(set + path.substring(end));
      }
    }
    return main.at(path);
  }

  @Override
  public String snippet(Place place) {
    return main.snippet(place);
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
