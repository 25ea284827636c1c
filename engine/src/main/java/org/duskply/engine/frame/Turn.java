package org.duskply.engine.frame;

import org.duskply.engine.pixel.Region;

/**
 * How a stored picture, or a part of it, is set upright (EXIF 2.3, tag 274, values 1 to 8): the
 * stored pixel in column x of row y of the part is pixel {@code base + x·across + y·down} of the
 * upright part, counted row by row.
 *
 * @param orientation the tag's value
 * @param stored the part of the stored picture
 * @param width of the upright part
 * @param height of the upright part
 */
record Turn(int orientation, Region stored, int width, int height, int base, int across, int down) {
  /** The turn of a stored picture of {@code w × h} pixels. */
  static Turn of(int orientation, int w, int h) {
    return of(orientation, Region.ofSize(w, h));
  }

  private static Turn of(int orientation, Region stored) {
    int w = stored.width();
    int h = stored.height();
    int last = w * h - 1;
    return switch (orientation) {
      case 1 -> new Turn(1, stored, w, h, 0, 1, w);
      case 2 -> new Turn(2, stored, w, h, w - 1, -1, w);
      case 3 -> new Turn(3, stored, w, h, last, -1, -w);
      case 4 -> new Turn(4, stored, w, h, last - (w - 1), 1, -w);
      case 5 -> new Turn(5, stored, h, w, 0, h, 1);
      case 6 -> new Turn(6, stored, h, w, h - 1, h, -1);
      case 7 -> new Turn(7, stored, h, w, last, -h, -1);
      case 8 -> new Turn(8, stored, h, w, last - (h - 1), -h, 1);
      default -> throw new IllegalArgumentException("orientation: " + orientation);
    };
  }

  /** The turn of a part of the upright picture; this is the turn of the whole. */
  Turn only(Region upright) {
    int left = upright.left();
    int top = upright.top();
    int fromRight = width - upright.right();
    int fromBottom = height - upright.bottom();
    int across = upright.width();
    int down = upright.height();
    return of(
        orientation,
        switch (orientation) {
          case 1 -> upright;
          case 2 -> sized(fromRight, top, across, down);
          case 3 -> sized(fromRight, fromBottom, across, down);
          case 4 -> sized(left, fromBottom, across, down);
          case 5 -> sized(top, left, down, across);
          case 6 -> sized(top, fromRight, down, across);
          case 7 -> sized(fromBottom, fromRight, down, across);
          default -> sized(fromBottom, left, down, across);
        });
  }

  private static Region sized(int left, int top, int width, int height) {
    return new Region(left, top, left + width, top + height);
  }

  /**
   * Puts what rows of the stored picture hold of the part where it belongs in the upright part's
   * array.
   *
   * @param rows with all columns of the part
   */
  void place(Samples rows, Object upright) {
    int channels = rows.channels();
    int columns = stored.width();
    int end = Math.min(rows.area().bottom(), stored.bottom());
    for (int y = Math.max(rows.area().top(), stored.top()); y < end; y++) {
      int from = rows.at(stored.left(), y);
      int to = (base + (y - stored.top()) * down) * channels;
      if (across == 1) {
        System.arraycopy(live(rows), from, upright, to, columns * channels);
      } else {
        switch (rows.kind()) {
          case BYTES -> place(rows.bytes(), from, (byte[]) upright, to, columns, channels);
          case SHORTS -> place(rows.shorts(), from, (short[]) upright, to, columns, channels);
          case FLOATS -> place(rows.floats(), from, (float[]) upright, to, columns, channels);
        }
      }
    }
  }

  private static Object live(Samples rows) {
    return switch (rows.kind()) {
      case BYTES -> rows.bytes();
      case SHORTS -> rows.shorts();
      case FLOATS -> rows.floats();
    };
  }

  private void place(byte[] in, int from, byte[] out, int to, int columns, int channels) {
    int step = across * channels;
    for (int x = 0, i = from, o = to; x < columns; x++, i += channels, o += step) {
      for (int c = 0; c < channels; c++) {
        out[o + c] = in[i + c];
      }
    }
  }

  private void place(short[] in, int from, short[] out, int to, int columns, int channels) {
    int step = across * channels;
    for (int x = 0, i = from, o = to; x < columns; x++, i += channels, o += step) {
      for (int c = 0; c < channels; c++) {
        out[o + c] = in[i + c];
      }
    }
  }

  private void place(float[] in, int from, float[] out, int to, int columns, int channels) {
    int step = across * channels;
    for (int x = 0, i = from, o = to; x < columns; x++, i += channels, o += step) {
      for (int c = 0; c < channels; c++) {
        out[o + c] = in[i + c];
      }
    }
  }
}
