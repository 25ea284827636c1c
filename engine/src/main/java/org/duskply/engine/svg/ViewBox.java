package org.duskply.engine.svg;

import java.util.List;
import org.duskply.engine.pixel.Affine;
import org.duskply.recipe.mask.PathData;
import org.jspecify.annotations.Nullable;

/**
 * A rectangle of a drawing that is fitted into another.
 *
 * <p>Source: SVG 2, chapter Coordinate Systems, "The preserveAspectRatio attribute" and "Computing
 * the equivalent transform of an SVG viewport".
 *
 * @param x left edge
 * @param y upper edge
 * @param width above 0
 * @param height above 0
 */
record ViewBox(double x, double y, double width, double height) {
  private static final String CENTRED = "xMidYMid";

  /** A {@code viewBox} attribute; null where it is not four numbers with a size above 0. */
  static @Nullable ViewBox parse(String text) {
    List<Double> n = SvgNumbers.list(text, 4);
    if (n == null || n.size() != 4 || !(n.get(2) > 0 && n.get(3) > 0)) {
      return null;
    }
    for (double number : n) {
      if (!(Math.abs(number) <= PathData.FARTHEST)) {
        return null;
      }
    }
    return new ViewBox(n.get(0), n.get(1), n.get(2), n.get(3));
  }

  /**
   * The map that fits this rectangle into one at the origin.
   *
   * @param aspect a {@code preserveAspectRatio}; absent: centred, all of it to be seen
   */
  Affine into(double w, double h, @Nullable String aspect) {
    String[] words = aspect == null ? new String[0] : aspect.strip().split("\\s+");
    String align = words.length == 0 || words[0].isEmpty() ? CENTRED : words[0];
    double across = w / width;
    double down = h / height;
    if (!align.equals("none")) {
      boolean slice = words.length > 1 && words[1].equals("slice");
      double both = slice ? Math.max(across, down) : Math.min(across, down);
      across = both;
      down = both;
    }
    double left = share(align, "xMin", "xMax") * (w - width * across);
    double top = share(align, "YMin", "YMax") * (h - height * down);
    return new Affine(across, 0, 0, down, left - x * across, top - y * down);
  }

  private static double share(String align, String least, String most) {
    return align.contains(least) ? 0 : align.contains(most) ? 1 : 0.5;
  }
}
