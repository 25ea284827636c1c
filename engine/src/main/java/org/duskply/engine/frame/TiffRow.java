package org.duskply.engine.frame;

import java.nio.ByteOrder;

/** Turns unpacked rows of strips or tiles of one plane into samples. For one thread. */
interface TiffRow {
  /**
   * Pixels of one row.
   *
   * @param packed the unpacked bytes, the row's first at {@code from}
   * @param left how many pixels of the row are passed over
   * @param pixels how many are taken after them
   * @param into the array of the samples, of the kind that {@link TiffKind} says
   * @param at the place of the first pixel's first sample
   */
  void row(byte[] packed, int from, int left, int pixels, Object into, int at);

  /**
   * For the rows of a plane.
   *
   * @param plane which, 0 where all samples of a pixel stand together
   * @param columns pixels of a stored row
   */
  static TiffRow of(
      ByteSource file,
      TiffPicture picture,
      TiffKind kind,
      ByteOrder order,
      int plane,
      int columns) {
    RowLayout layout = RowLayout.of(picture, kind, plane);
    if (picture.lab()) {
      return new TiffLabRow(picture, layout, order);
    }
    if (picture.format() == TiffPicture.FLOATS) {
      return new TiffFloatRow(picture, layout, order, columns);
    }
    boolean plain = picture.bits() == 8 || picture.bits() == 16;
    return plain && kind.palette().length == 0
        ? new TiffPlainRow(picture, layout, order)
        : new TiffBitsRow(file, picture, kind, layout, order);
  }

  /** Most bytes that are held for rows of {@code columns} pixels. */
  static long workingBytes(TiffPicture picture, long columns) {
    boolean plain =
        picture.format() != TiffPicture.FLOATS
            && (picture.bits() == 8 || picture.bits() == 16)
            && picture.photometric() != TiffPicture.PALETTE;
    boolean summed = picture.predicted() == 2 && !(picture.bits() == 16 && picture.stored() == 3);
    boolean inPlace = plain && !summed && !picture.planar() && !picture.drops();
    return inPlace ? 0 : columns * picture.stored() * 8;
  }
}
