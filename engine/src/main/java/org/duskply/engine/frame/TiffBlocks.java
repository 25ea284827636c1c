package org.duskply.engine.frame;

import java.util.Arrays;

/**
 * Where the strips or tiles of a TIFF picture lie. Strips are blocks as wide as the picture; blocks
 * are numbered row by row, plane after plane where planes are stored apart. Every block that is
 * needed lies in the file and shares no byte with another.
 *
 * @param width of a block in pixels
 * @param height of a block in rows
 * @param across blocks side by side
 * @param down blocks one above the other
 * @param offsets of each block
 * @param lengths in bytes of each block as stored
 */
record TiffBlocks(
    boolean tiled, int width, int height, int across, int down, long[] offsets, long[] lengths) {

  /**
   * Reads and checks the places.
   *
   * @param tolerant whether blocks may pass the file's end, and are then cut off there
   * @throws FrameException naming the file and the first bad row
   */
  static TiffBlocks read(ByteSource file, TiffDirectory d, TiffPicture picture, boolean tolerant) {
    boolean tiled = d.has(TiffTag.TILE_WIDTH) || d.has(TiffTag.TILE_OFFSETS);
    int width = tiled ? side(file, d, TiffTag.TILE_WIDTH) : picture.width();
    int height =
        tiled
            ? side(file, d, TiffTag.TILE_LENGTH)
            : (int) Math.min(rowsPerStrip(file, d), picture.height());
    if (picture.rowBytes(width) > FrameLimits.MAX_ROW_BYTES) {
      throw file.fail("stores " + picture.rowBytes(width) + " bytes in a row, which is too many");
    }
    int across = (picture.width() - 1) / width + 1;
    int down = (picture.height() - 1) / height + 1;
    if ((long) across * down * picture.stored() > FrameLimits.MAX_BLOCKS) {
      throw file.fail("is cut into more than " + FrameLimits.MAX_BLOCKS + " pieces");
    }
    int count = across * down * (picture.planar() ? picture.stored() : 1);
    TiffBlocks blocks =
        new TiffBlocks(
            tiled,
            width,
            height,
            across,
            down,
            places(file, d, either(d, TiffTag.TILE_OFFSETS, TiffTag.STRIP_OFFSETS), count),
            new long[count]);
    blocks.measure(file, d, picture);
    if (tolerant) {
      blocks.cutOff(file.size());
    } else {
      blocks.checkInside(file);
    }
    blocks.checkApart(file);
    return blocks;
  }

  /** Some writers list their tiles under the tags of strips. */
  private static int either(TiffDirectory d, int tiles, int strips) {
    return d.has(tiles) ? tiles : strips;
  }

  private static int side(ByteSource file, TiffDirectory d, int tag) {
    long side = d.number(tag, 0);
    if (side < 1 || side > FrameLimits.MAX_SIDE) {
      throw file.fail("is damaged: its tiles have a side of " + side + " (tag " + tag + ")");
    }
    return (int) side;
  }

  private static long rowsPerStrip(ByteSource file, TiffDirectory d) {
    long rows = d.number(TiffTag.ROWS_PER_STRIP, Integer.MAX_VALUE);
    if (rows < 1) {
      throw file.fail("is damaged: its strips have no rows (tag 278)");
    }
    return rows;
  }

  private static long[] places(ByteSource file, TiffDirectory d, int tag, int blocks) {
    long[] places = d.numbers(tag, FrameLimits.MAX_BLOCKS);
    if (places.length < blocks) {
      throw file.fail(
          "is damaged: it lists " + places.length + " of the " + blocks + " pieces it is cut into");
    }
    return places.length == blocks ? places : Arrays.copyOf(places, blocks);
  }

  /** Fills in the lengths: what uncompressed rows need, what the file says of compressed ones. */
  private void measure(ByteSource file, TiffDirectory d, TiffPicture picture) {
    int tag = either(d, TiffTag.TILE_BYTE_COUNTS, TiffTag.STRIP_BYTE_COUNTS);
    boolean raw = picture.compression() == TiffPicture.NONE;
    if (!d.has(tag) && !raw) {
      if (offsets.length > 1) {
        throw file.fail("is damaged: it does not say how long its pieces are (tag " + tag + ")");
      }
      lengths[0] = file.size() - offsets[0];
      return;
    }
    long[] said = d.has(tag) ? places(file, d, tag, offsets.length) : new long[0];
    for (int b = 0; b < lengths.length; b++) {
      long need = raw ? rows(b, picture.height()) * picture.rowBytes(width) : 1;
      if (said.length > 0 && said[b] < need) {
        throw file.fail(
            "is damaged: it says that "
                + said[b]
                + " bytes hold the rows from "
                + top(b)
                + ", which need "
                + (raw ? "" : "at least ")
                + need);
      }
      lengths[b] = raw ? need : said[b];
    }
  }

  private void checkInside(ByteSource file) {
    for (int b = 0; b < offsets.length; b++) {
      if (offsets[b] < 8 || lengths[b] < 1 || offsets[b] > file.size() - lengths[b]) {
        throw file.fail("is cut short: the rows from " + top(b) + " down are not all there");
      }
    }
  }

  private void cutOff(long size) {
    for (int b = 0; b < offsets.length; b++) {
      boolean inside = offsets[b] >= 8 && offsets[b] < size && lengths[b] > 0;
      offsets[b] = inside ? offsets[b] : size;
      lengths[b] = inside ? Math.min(lengths[b], size - offsets[b]) : 0;
    }
  }

  private void checkApart(ByteSource file) {
    boolean rising = true;
    for (int b = 1; b < offsets.length && rising; b++) {
      rising = offsets[b] >= offsets[b - 1] + lengths[b - 1];
    }
    if (rising) {
      return;
    }
    Integer[] order = new Integer[offsets.length];
    Arrays.setAll(order, b -> b);
    Arrays.sort(order, (a, b) -> Long.compare(offsets[a], offsets[b]));
    for (int i = 1; i < order.length; i++) {
      int above = order[i - 1];
      int below = order[i];
      if (offsets[below] < offsets[above] + lengths[above]) {
        throw file.fail(
            "is damaged: the rows from "
                + Math.min(top(above), top(below))
                + " and those from "
                + Math.max(top(above), top(below))
                + " share the same bytes");
      }
    }
  }

  /** Which plane a block belongs to, 0 where all samples of a pixel stand together. */
  int plane(int block) {
    return block / (across * down);
  }

  /** The first picture row of a block. */
  int top(int block) {
    return block % (across * down) / across * height;
  }

  /** How many of a block's rows lie in a picture of {@code pictureHeight} rows. */
  int rows(int block, int pictureHeight) {
    return Math.min(height, pictureHeight - top(block));
  }
}
