package org.duskply.engine.frame;

import java.util.Arrays;

/**
 * Which samples of a stored row are kept, and where they go.
 *
 * @param stored samples that a pixel has in the row
 * @param kept which of them are kept, in the order of the channels they become
 * @param first the channel that the first of them becomes
 * @param channels samples that a pixel has in the end
 */
record RowLayout(int stored, int[] kept, int first, int channels) {
  /** The layout of the rows of a plane; 0 where all samples of a pixel stand together. */
  static RowLayout of(TiffPicture picture, TiffKind kind, int plane) {
    if (!picture.planar()) {
      return new RowLayout(picture.stored(), picture.kept(), 0, kind.channels());
    }
    int[] kept = picture.kept();
    int channel = Arrays.binarySearch(kept, plane);
    return new RowLayout(1, new int[] {0}, channel, kind.channels());
  }

  /** Whether a stored row is a finished row. */
  boolean whole() {
    return stored == channels && kept.length == channels;
  }
}
