package org.duskply.engine.deliver;

import org.duskply.engine.pixel.Region;
import org.duskply.recipe.Size;

/**
 * Which part of a finished picture a file shows, and how large. Sizes and parts are whole numbers
 * found by whole numbers: no float decides them.
 *
 * @param part of the picture, in its pixels
 * @param size of the file; a part smaller than that is enlarged, for a printer may ask for it
 */
public record Extent(Region part, Size size) {
  /** All of it as it is. */
  public static Extent whole(int width, int height) {
    return new Extent(Region.ofSize(width, height), new Size(width, height));
  }

  /** All of it with that longer side: {@code long-edge} of a deliverable. */
  public static Extent longEdge(int width, int height, int edge) {
    return new Extent(Region.ofSize(width, height), LongEdge.size(width, height, edge));
  }

  /**
   * The largest part of the size's shape about the middle: {@code size} of a deliverable. One side
   * of the part is the picture's own, the other {@code side·ratio} rounded half up, at least 1.
   * Where an odd number of columns or rows falls away, the right or the bottom loses the one more.
   */
  public static Extent cropped(int width, int height, Size size) {
    long across = (long) width * size.height();
    long down = (long) height * size.width();
    int columns = across > down ? rounded(down, size.height()) : width;
    int rows = across < down ? rounded(across, size.width()) : height;
    Region part = Region.ofSize(columns, rows).move((width - columns) / 2, (height - rows) / 2);
    return new Extent(part, size);
  }

  private static int rounded(long product, int by) {
    return (int) Math.max(1, (2 * product + by) / (2L * by));
  }

  /** Whether the longer side of the file has more pixels than the part shows there. */
  public boolean enlarges() {
    return size.width() >= size.height()
        ? size.width() > part.width()
        : size.height() > part.height();
  }

  /** Whether the file shows the picture of that size as it is. */
  public boolean isWhole(int width, int height) {
    return equals(whole(width, height));
  }
}
