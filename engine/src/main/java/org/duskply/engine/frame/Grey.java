package org.duskply.engine.frame;

/** What stands in place of pixels that are not there: the middle of the scale, opaque. */
final class Grey {
  private Grey() {}

  /**
   * Fills a row of a TIFF picture's plane.
   *
   * @param at the place of the first pixel's first sample
   */
  static void fill(TiffPicture picture, TiffKind kind, int plane, int pixels, Object into, int at) {
    RowLayout layout = RowLayout.of(picture, kind, plane);
    int channels = kind.channels();
    int first = Math.max(0, layout.first());
    int last = picture.planar() ? first : channels - 1;
    boolean alpha = picture.alpha() != FrameInfo.Alpha.NONE;
    for (int c = first; c <= last; c++) {
      double share = alpha && c == channels - 1 ? 1 : 0.5;
      fill(into, at + c, channels, pixels, share * kind.fullScale());
    }
  }

  /** Fills one channel of some pixels with a value. */
  static void fill(Object into, int at, int step, int pixels, double value) {
    for (int p = 0, o = at; p < pixels; p++, o += step) {
      if (into instanceof byte[] bytes) {
        bytes[o] = (byte) (int) value;
      } else if (into instanceof short[] shorts) {
        shorts[o] = (short) (int) value;
      } else {
        ((float[]) into)[o] = (float) value;
      }
    }
  }
}
