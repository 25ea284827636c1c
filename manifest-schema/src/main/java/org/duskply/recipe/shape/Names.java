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

  /** What a step can be called by: a name, or places such as {@code #7} and {@code water/#2}. */
  public static final String STEP_PATTERN =
      "(" + PATTERN + "|#[1-9][0-9]{0,4})(/#[1-9][0-9]{0,4})*";

  private static final Pattern NAME = Pattern.compile(PATTERN);
  private static final Pattern STEP = Pattern.compile(STEP_PATTERN);

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

  /** What keeps {@code text} from being what a step is called by; null when nothing does. */
  static @Nullable String stepFault(String text) {
    if (RESERVED.contains(text) || STEP.matcher(text).matches()) {
      return RESERVED.contains(text) ? fault(text) : null;
    }
    return "cannot be a step: write its name, or its place in quotes, such as \"#7\"";
  }
}
