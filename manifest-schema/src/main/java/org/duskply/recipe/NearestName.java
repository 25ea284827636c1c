package org.duskply.recipe;

import java.util.Collection;
import java.util.Optional;
import org.duskply.recipe.text.Nearest;

/** Finds what a mistyped name was probably meant to be. */
public final class NearestName {
  private NearestName() {}

  /** The known name with the fewest slips; absent where none is near. */
  public static Optional<String> among(Collection<String> known, String name) {
    return Optional.ofNullable(Nearest.among(known, name));
  }
}
