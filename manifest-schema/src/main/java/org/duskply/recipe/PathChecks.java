package org.duskply.recipe;

import org.duskply.recipe.text.Mentions;
import org.duskply.recipe.text.Problems;

/** Looks where the frames of a recipe lie, by the text of their paths. */
final class PathChecks {
  private PathChecks() {}

  /** Frames must lie in the recipe's folder or below. */
  static void insideFolder(Mentions mentions, Problems problems) {
    for (Mentions.FileUse use : mentions.files()) {
      if (FilePaths.leaves(use.file())) {
        problems.add(
            use.spot(),
            use.path(),
            "the path `"
                + use.file()
                + "` leads out of the recipe's folder; move the file there, or allow its folder"
                + " with --allow DIR",
            use.file(),
            "a path inside the recipe's folder");
      }
    }
  }
}
