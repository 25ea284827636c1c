package org.duskply.engine;

import org.duskply.engine.deliver.Extent;
import org.duskply.engine.pixel.Region;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.Size;
import org.duskply.recipe.deliver.Deliverable;

/** How large the files of a recipe become. */
final class Sizes {
  private Sizes() {}

  /**
   * What a deliverable shows of a finished picture, and how large.
   *
   * @param reduction the {@code n} of a preview's scale {@code 1/n}; the picture has it already,
   *     and its files are made smaller as much
   */
  static Extent of(Deliverable deliverable, int width, int height, int reduction) {
    Integer edge = deliverable.longEdge();
    if (edge != null) {
      return Extent.longEdge(width, height, reduced(edge, reduction));
    }
    Size size = deliverable.size();
    if (size == null) {
      return Extent.whole(width, height);
    }
    Size less = new Size(reduced(size.width(), reduction), reduced(size.height(), reduction));
    return Extent.cropped(width, height, less);
  }

  private static int reduced(int side, int n) {
    return Math.max(1, (side + n / 2) / n);
  }

  /**
   * Tells of files larger than what they show. They are made all the same, for a printer may ask
   * for one.
   *
   * @param shown the finished picture at full size
   */
  static void tellEnlarged(Recipe recipe, Region shown, Found found) {
    recipe
        .deliverables()
        .forEach(
            (name, deliverable) -> {
              Extent extent = of(deliverable, shown.width(), shown.height(), 1);
              if (extent.enlarges()) {
                String key = deliverable.longEdge() != null ? "long-edge" : "size";
                found.notice("deliverables/" + name + "/" + key, enlarged(extent));
              }
            });
  }

  private static String enlarged(Extent extent) {
    return "This file is larger than what it shows: "
        + extent.part().width()
        + " × "
        + extent.part().height()
        + " pixels become "
        + extent.size().width()
        + " × "
        + extent.size().height()
        + ", which adds no detail.";
  }
}
