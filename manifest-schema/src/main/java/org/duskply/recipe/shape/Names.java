package org.duskply.recipe.shape;

import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** What may be the name of a frame, a mask, a step or a deliverable. */
public final class Names {
  /** The pattern of a name, as a regular expression. */
  public static final String PATTERN = "[a-z][a-z0-9_-]{0,63}";

  /** Words with a meaning of their own, which cannot be names. */
  public static final List<String> RESERVED = List.of("all", "none", "main", "base", "below");

  /** The rule in words. */
  public static final String RULE =
      "1 to 64 of the letters a to z, digits, - and _, beginning with a letter";

  private static final Pattern NAME = Pattern.compile(PATTERN);

  private Names() {}

  /** Whether {@code text} has the form of a name and is not reserved. */
  public static boolean valid(String text) {
    return fault(text) == null;
  }

  /** What keeps {@code text} from being a name, as a clause; null when nothing does. */
  public static @Nullable String fault(String text) {
    if (RESERVED.contains(text)) {
      return "is a word with a meaning of its own and cannot be a name";
    }
    if (!NAME.matcher(text).matches()) {
      return "cannot be a name: a name is " + RULE;
    }
    return null;
  }
}
