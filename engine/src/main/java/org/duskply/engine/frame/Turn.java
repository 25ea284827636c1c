package org.duskply.engine.frame;

/**
 * How a stored picture is set upright (EXIF 2.3, tag 274, values 1 to 8): the stored pixel in
 * column x of row y is pixel {@code base + x·across + y·down} of the upright one, counted row by
 * row.
 *
 * @param width of the upright picture
 * @param height of the upright picture
 */
record Turn(int width, int height, int base, int across, int down) {
  /** The turn of a stored picture of {@code w × h} pixels. */
  static Turn of(int orientation, int w, int h) {
    int last = w * h - 1;
    return switch (orientation) {
      case 1 -> new Turn(w, h, 0, 1, w);
      case 2 -> new Turn(w, h, w - 1, -1, w);
      case 3 -> new Turn(w, h, last, -1, -w);
      case 4 -> new Turn(w, h, last - (w - 1), 1, -w);
      case 5 -> new Turn(h, w, 0, h, 1);
      case 6 -> new Turn(h, w, h - 1, h, -1);
      case 7 -> new Turn(h, w, last, -h, -1);
      case 8 -> new Turn(h, w, last - (h - 1), -h, 1);
      default -> throw new IllegalArgumentException("orientation: " + orientation);
    };
  }

  /** Puts rows of the stored picture where they belong in the upright one's array. */
  void place(Samples rows, Object upright) {
    int channels = rows.channels();
    int columns = rows.area().width();
    for (int y = rows.area().top(); y < rows.area().bottom(); y++) {
      int from = rows.at(0, y);
      int to = (base + y * down) * channels;
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
