package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.pixel.Region;

/** A crop in a sentence. */
final class CropWords {
  private CropWords() {}

  /**
   * The sentence, in pixels of the picture.
   *
   * @param kept another region than {@code all}, inside it
   */
  static String sentence(Region all, Region kept) {
    List<String> off = new ArrayList<>();
    add(kept.left() - all.left(), "at the left", off);
    add(all.right() - kept.right(), "at the right", off);
    add(kept.top() - all.top(), "at the top", off);
    add(all.bottom() - kept.bottom(), "at the bottom", off);
    return "The picture is cropped from "
        + size(all)
        + " to "
        + size(kept)
        + " pixels: "
        + ListWords.and(off)
        + " fall away.";
  }

  private static void add(int count, String where, List<String> off) {
    if (count > 0) {
      off.add(count + " " + where);
    }
  }

  private static String size(Region region) {
    return region.width() + " × " + region.height();
  }
}
