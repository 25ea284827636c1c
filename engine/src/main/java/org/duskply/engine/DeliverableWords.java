package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.deliver.Extent;
import org.duskply.recipe.Alternate;
import org.duskply.recipe.Size;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Deliverable;
import org.duskply.recipe.deliver.Format;

/** A deliverable in one sentence: which part, how large, in which kind of file, and where to. */
final class DeliverableWords {
  private DeliverableWords() {}

  /**
   * The sentence.
   *
   * @param extent which part of the finished picture, and how large
   * @param width of the finished picture
   * @param height of the finished picture
   * @param files the files' paths from the output folder, one for each of {@code alternates}
   * @param alternates whose pictures are written, in order
   */
  static String sentence(
      Deliverable deliverable,
      Extent extent,
      int width,
      int height,
      List<String> alternates,
      List<String> files) {
    return shown(extent, width, height)
        + " is written as a "
        + deliverable.format()
        + " in "
        + deliverable.profile().key()
        + " with "
        + ListWords.and(properties(deliverable))
        + targets(alternates, files)
        + ".";
  }

  private static String shown(Extent extent, int width, int height) {
    Size part = new Size(extent.part().width(), extent.part().height());
    boolean all = part.width() == width && part.height() == height;
    String what = all ? "The picture" : "The middle of the picture, " + pixels(part) + ",";
    return part.equals(extent.size())
        ? what + (all ? ", " + pixels(part) + "," : "")
        : what + (all ? "," : "") + " scaled to " + pixels(extent.size()) + (all ? "," : "");
  }

  private static String pixels(Size size) {
    return size.width() + " × " + size.height() + " pixels";
  }

  private static List<String> properties(Deliverable deliverable) {
    List<String> properties = new ArrayList<>();
    properties.add(deliverable.depth() + " bits a channel");
    if (deliverable.depth() == 8 && deliverable.dither()) {
      properties.add("dithering");
    }
    if (deliverable.format() == Format.TIFF) {
      properties.add(packing(deliverable.compress()));
    }
    if (deliverable.format() == Format.JPEG) {
      properties.add("quality " + NumberWords.exact(deliverable.quality()));
    }
    properties.add(deliverable.density() + " dots an inch");
    return properties;
  }

  private static String packing(Compress compress) {
    return switch (compress) {
      case NONE -> "no packing";
      case LZW -> "LZW packing";
      case DEFLATE -> "deflate packing";
    };
  }

  private static String targets(List<String> alternates, List<String> files) {
    List<String> targets = new ArrayList<>();
    for (int i = 0; i < files.size(); i++) {
      String alternate = alternates.get(i);
      targets.add(
          (alternate.equals(Alternate.MAIN) ? "" : "as the alternate " + alternate + " ")
              + "to "
              + files.get(i));
    }
    return ", " + ListWords.and(targets);
  }
}
