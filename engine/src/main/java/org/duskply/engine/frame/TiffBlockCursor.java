package org.duskply.engine.frame;

import java.nio.ByteOrder;
import org.jspecify.annotations.Nullable;

/**
 * Reads the rows of one strip or tile from its top down, some at a time. Another block can be
 * opened at any time. For one thread.
 */
final class TiffBlockCursor implements AutoCloseable {
  /** Unpacked bytes that are in hand at once, so that they stay in the processor's cache. */
  private static final int GROUP_BYTES = 160 << 10;

  /**
   * Bytes of a packed block that are looked at, for each that it unpacks to: any packing in earnest
   * stays below two, and without a limit a block could hold no end of nothing.
   */
  private static final int MOST_PACKED = 4;

  private static final int LEAST_PACKED = 64 << 10; // may always be looked at

  private final ByteSource file;
  private final TiffPicture picture;
  private final TiffKind kind;
  private final TiffBlocks blocks;
  private final Damage damage;
  private final Unpacker unpacker;
  private final ByteOrder order;
  private final @Nullable TiffRow[] rows;
  private final int rowBytes;
  private final byte[] group;
  private int block = -1;
  private int nextRow;
  private boolean broken;

  TiffBlockCursor(
      ByteSource file,
      ByteOrder order,
      TiffPicture picture,
      TiffKind kind,
      TiffBlocks blocks,
      Damage damage) {
    this.file = file;
    this.picture = picture;
    this.kind = kind;
    this.blocks = blocks;
    this.damage = damage;
    this.order = order;
    ByteSource stored = picture.fillOrder() == 2 ? new MirroredBytes(file) : file;
    this.unpacker = Unpacker.of(picture.compression(), stored);
    this.rows = new TiffRow[picture.planar() ? picture.stored() : 1];
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
    this.broken = false;
    long most = LEAST_PACKED + (long) MOST_PACKED * rowBytes * blocks.height();
    unpacker.start(blocks.offsets()[block], Math.min(blocks.lengths()[block], most));
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
    unpacker.skip((long) rows * rowBytes, group);
    nextRow += rows;
  }

  /**
   * Reads the next {@code rows} rows.
   *
   * @param left how many pixels of each are passed over
   * @param pixels how many are taken after them
   * @param into an array of the kind that {@link TiffKind} says
   * @param at the place of the first pixel, {@code stride} apart from one row to the next
   */
  void read(int rows, int left, int pixels, Object into, int at, int stride) {
    int most = group.length / rowBytes;
    TiffRow row = row(blocks.plane(block));
    for (int done = 0; done < rows; ) {
      int some = Math.min(most, rows - done);
      int got = broken ? 0 : unpacker.read(group, 0, some * rowBytes) / rowBytes;
      for (int r = 0; r < got; r++) {
        row.row(group, r * rowBytes, left, pixels, into, at + (done + r) * stride);
      }
      if (got < some) {
        lose(got, rows - done);
        for (int r = got; r < some; r++) {
          Grey.fill(picture, kind, blocks.plane(block), pixels, into, at + (done + r) * stride);
        }
      }
      done += some;
      nextRow += some;
    }
    checkNothingLeft();
  }

  private TiffRow row(int plane) {
    TiffRow row = rows[plane];
    if (row == null) {
      row = TiffRow.of(file, picture, kind, order, plane, blocks.width());
      rows[plane] = row;
    }
    return row;
  }

  /** What follows in the block cannot be had, of this call down to its {@code last} row. */
  private void lose(int whole, int last) {
    int top = blocks.top(block) + nextRow;
    int bad = top + whole;
    broken = true;
    boolean there = blocks.lengths()[block] > 0;
    damage.rows(
        bad,
        Math.min(top + last, picture.height()),
        file.fail(
            there
                ? "is damaged: the rows from " + bad + " down cannot be unpacked"
                : "is cut short: the rows from " + bad + " down are not all there"));
  }

  /**
   * A deflated block that goes on behind its last row is not what it says it is, and its checksum
   * is only looked at when its end is reached. LZW is left alone: old writers end it carelessly.
   */
  private void checkNothingLeft() {
    if (nextRow != blocks.height() || broken || !(unpacker instanceof DeflateUnpacker inflater)) {
      return;
    }
    int top = blocks.top(block);
    if (inflater.read(new byte[1], 0, 1) > 0) {
      damage.rows(
          top,
          top + nextRow,
          file.fail("is damaged: the rows from " + top + " unpack to more than there is room for"));
    }
    if (inflater.damaged()) {
      damage.rows(
          top,
          top + nextRow,
          file.fail("is damaged: the rows from " + top + " down do not match their checksum"));
    }
  }

  @Override
  public void close() {
    unpacker.close();
  }
}
