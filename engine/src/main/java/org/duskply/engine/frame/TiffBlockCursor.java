package org.duskply.engine.frame;

/**
 * Reads the rows of one strip or tile from its top down, some at a time. Another block can be
 * opened at any time. For one thread.
 */
final class TiffBlockCursor implements AutoCloseable {
  /** Unpacked bytes that are in hand at once, so that they stay in the processor's cache. */
  private static final int GROUP_BYTES = 64 << 10;

  private final ByteSource file;
  private final TiffPicture picture;
  private final TiffBlocks blocks;
  private final Unpacker unpacker;
  private final TiffRow row;
  private final int rowBytes;
  private final byte[] group;
  private int block = -1;
  private int nextRow;

  TiffBlockCursor(ByteSource file, TiffForm form, TiffPicture picture, TiffBlocks blocks) {
    this.file = file;
    this.picture = picture;
    this.blocks = blocks;
    this.unpacker = Unpacker.of(picture.compression(), file);
    this.row = new TiffRow(picture, form.order());
    this.rowBytes = (int) picture.rowBytes(blocks.width());
    this.group = new byte[groupRows(rowBytes, blocks.height()) * rowBytes];
  }

  private static int groupRows(int rowBytes, int rows) {
    return Math.max(1, Math.min(rows, GROUP_BYTES / rowBytes));
  }

  /** Most bytes that a cursor holds. */
  static long workingBytes(TiffPicture picture, TiffBlocks blocks) {
    int rowBytes = (int) picture.rowBytes(blocks.width());
    return Unpacker.workingBytes(picture.compression())
        + (long) groupRows(rowBytes, blocks.height()) * rowBytes
        + TiffRow.workingBytes(picture, blocks.width());
  }

  /** Opens a block at its top. */
  void open(int block) {
    this.block = block;
    this.nextRow = 0;
    unpacker.start(blocks.offsets()[block], blocks.lengths()[block]);
  }

  /** The open block, −1 if none is. */
  int block() {
    return block;
  }

  /** The row of the open block that comes next. */
  int nextRow() {
    return nextRow;
  }

  /** Passes over rows of the open block. */
  void skip(int rows) {
    unpacker.skip((long) rows * rowBytes);
    nextRow += rows;
  }

  /**
   * Reads the next {@code rows} rows.
   *
   * @param pixels how many pixels of each
   * @param into a {@code byte[]} or a {@code short[]}, as the picture's bits say
   * @param at the place of the first sample, {@code stride} apart from one row to the next
   */
  void read(int rows, int pixels, Object into, int at, int stride) {
    int most = group.length / rowBytes;
    for (int done = 0; done < rows; ) {
      int some = Math.min(most, rows - done);
      int got = unpacker.read(group, 0, some * rowBytes);
      if (got < some * rowBytes) {
        throw spent(got / rowBytes);
      }
      for (int r = 0; r < some; r++) {
        int place = at + (done + r) * stride;
        if (picture.bits() == 8) {
          row.bytes(group, r * rowBytes, pixels, (byte[]) into, place);
        } else {
          row.shorts(group, r * rowBytes, pixels, (short[]) into, place);
        }
      }
      done += some;
      nextRow += some;
    }
    checkNothingLeft();
  }

  /** The block is given up: its place is no longer known. */
  private FrameException spent(int whole) {
    int bad = blocks.top(block) + nextRow + whole;
    block = -1;
    return file.fail("is damaged: the rows from " + bad + " down cannot be unpacked");
  }

  /**
   * A deflated block that goes on behind its last row is not what it says it is, and its checksum
   * is only looked at when its end is reached. LZW is left alone: old writers end it carelessly.
   */
  private void checkNothingLeft() {
    if (nextRow != blocks.height() || !(unpacker instanceof InflateUnpacker inflater)) {
      return;
    }
    if (inflater.read(new byte[1], 0, 1) > 0) {
      throw file.fail(
          "is damaged: the rows from "
              + blocks.top(block)
              + " unpack to more than there is room for");
    }
    if (inflater.damaged()) {
      throw file.fail(
          "is damaged: the rows from " + blocks.top(block) + " down do not match their checksum");
    }
  }

  @Override
  public void close() {
    unpacker.close();
  }
}
