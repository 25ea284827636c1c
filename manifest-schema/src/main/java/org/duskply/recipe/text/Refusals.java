package org.duskply.recipe.text;

/** Parts of YAML that recipes do without, and what to write instead. */
final class Refusals {
  private Refusals() {}

  /**
   * Reports an anchor, an alias or a tag, told by the character that a value or key begins with.
   *
   * @return whether it was one
   */
  static boolean reported(int first, Spot spot, String path, Problems problems) {
    switch (first) {
      case '*' ->
          problems.add(
              spot,
              path,
              "aliases (*name) are not used in recipes; frames and masks have names, so write the"
                  + " name itself",
              "an alias",
              "a value");
      case '&' ->
          problems.add(
              spot,
              path,
              "anchors (&name) are not used in recipes; give the thing a name under frames or"
                  + " masks and use that name",
              "an anchor",
              "a value");
      case '!' ->
          problems.add(
              spot,
              path,
              "type tags (!name) are not used in recipes; delete the tag, and put quotes around a"
                  + " text that looks like a number",
              "a tag",
              "a value");
      default -> {
        return false;
      }
    }
    return true;
  }

  /** Reports a merge key, or a key that is not there. */
  static boolean keyReported(String key, Spot spot, String path, Problems problems) {
    if (key.equals("<<")) {
      problems.add(
          spot,
          path,
          "merge keys (<<) are not used in recipes; write the keys out, or give the thing a name"
              + " under frames or masks and use the name",
          "<<",
          "a key");
      return true;
    }
    if (key.isEmpty()) {
      problems.add(spot, path, "a key is missing before this colon; write key: value", "", "a key");
      return true;
    }
    return false;
  }

  /** Reports a text that cannot be written as UTF-8. */
  static boolean halfCharacter(String text, Spot spot, String path, Problems problems) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean pair =
          Character.isHighSurrogate(c)
              && i + 1 < text.length()
              && Character.isLowSurrogate(text.charAt(i + 1));
      if (pair) {
        i++;
      } else if (Character.isSurrogate(c)) {
        problems.add(
            spot,
            path,
            "this text holds half of a character (a lone surrogate); type the character itself",
            "half a character",
            "text");
        return true;
      }
    }
    return false;
  }
}
