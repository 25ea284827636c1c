package org.duskply.recipe;

import org.duskply.recipe.text.Problems;
import org.duskply.recipe.text.Tree;

/** Refuses recipes of a later version with one sentence, in place of a list of unknown keys. */
final class Newer {
  private Newer() {}

  static boolean refused(Tree tree, Problems problems) {
    return tree instanceof Tree.Mapping mapping
        && (refused(mapping, "duskply", "version", Recipe.VERSION, problems)
            || refused(mapping, "needs", "schema revision", Recipe.REVISION, problems));
  }

  private static boolean refused(
      Tree.Mapping mapping, String key, String noun, int known, Problems problems) {
    Tree.Entry entry = mapping.entry(key);
    if (entry == null
        || !(entry.value() instanceof Tree.Scalar scalar)
        || !scalar.text().matches("[1-9][0-9]{0,8}")
        || Integer.parseInt(scalar.text()) <= known) {
      return false;
    }
    problems.add(
        scalar.spot(),
        key,
        String.format(
            "this recipe needs %s %s, and this program knows %s up to %d; get a newer one",
            noun, scalar.text(), noun, known),
        scalar.text(),
        "at most " + known);
    return true;
  }
}
