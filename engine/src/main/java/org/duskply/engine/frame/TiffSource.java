package org.duskply.engine.frame;

import java.util.List;
import java.util.function.Consumer;
import org.duskply.engine.pixel.Region;

/**
 * A TIFF picture of whole numbers or floats, uncompressed, deflated, LZW or PackBits, in strips or
 * tiles, its samples together or in planes. Three ways to reach its rows:
 *
 * <ul>
 *   <li>blocks of moderate height: as many whole rows of blocks as make about 64 picture rows are a
 *       unit, any of them at any time;
 *   <li>tall uncompressed blocks: 64 rows a unit, read from where they lie;
 *   <li>tall compressed blocks: 64 rows a unit, from the top down by cursors that keep their place.
 * </ul>
 */
final class TiffSource implements FrameSource {
  /** How rows are reached. */
  enum Way {
    BLOCKS,
    ROWS,
    CURSOR
  }

  private final FrameFile file;
  private final TiffForm form;
  private final TiffPicture picture;
  private final TiffKind kind;
  private final TiffBlocks blocks;
  private final FrameInfo info;
  private final Way way;
  private final int unitRows;

  /** The file is asked for its name and counters, and opened again by each reader. */
  TiffSource(
      FrameFile file,
      TiffForm form,
      TiffPicture picture,
      TiffKind kind,
      TiffBlocks blocks,
      FrameInfo info) {
    this.file = file;
    this.form = form;
    this.picture = picture;
    this.kind = kind;
    this.blocks = blocks;
    this.info = info;
    long rowBytes = (long) picture.width() * kind.channels() * kind.samples().bytes();
    int rows = FrameLimits.unitRows(rowBytes);
    if (blocks.height() <= rows) {
      this.way = Way.BLOCKS;
      this.unitRows = grouped(blocks.height(), Math.min(rows, FrameLimits.GROUPED_ROWS));
    } else if (blocks.height() <= FrameLimits.MAX_UNIT_ROWS
        && blocks.height() * rowBytes <= FrameLimits.MAX_UNIT_BYTES) {
      this.way = Way.BLOCKS;
      this.unitRows = blocks.height();
    } else {
      this.way = picture.compression() == TiffPicture.NONE ? Way.ROWS : Way.CURSOR;
      this.unitRows = rows;
    }
  }

  /**
   * Low blocks share a unit, so that a file of one-row strips does not become thousands of tasks;
   * others stand alone.
   */
  private static int grouped(int blockRows, int rows) {
    return Math.max(1, rows / blockRows) * blockRows;
  }

  @Override
  public FrameInfo info() {
    return info;
  }

  @Override
  public Access access() {
    return way == Way.CURSOR ? Access.FORWARD : Access.RANDOM;
  }

  @Override
  public String reason() {
    String kind = blocks.tiled() ? "tiles" : "strips";
    return switch (way) {
      case BLOCKS ->
          "TIFF in " + kind + " of " + blocks.height() + " rows: only the rows needed are read";
      case ROWS -> "uncompressed TIFF: only the rows needed are read";
      case CURSOR ->
          "TIFF in compressed "
              + kind
              + " of "
              + blocks.height()
              + " rows: unpacked from the top of each down to the rows needed";
    };
  }

  @Override
  public int units() {
    return (picture.height() - 1) / unitRows + 1;
  }

  @Override
  public Region unit(int index) {
    if (index < 0 || index >= units()) {
      throw new IndexOutOfBoundsException("unit " + index + " of " + units());
    }
    int top = index * unitRows;
    return new Region(0, top, picture.width(), Math.min(picture.height(), top + unitRows));
  }

  @Override
  public Region returned(int index, Region part) {
    return unit(index).meet(part);
  }

  @Override
  public long workingBytes() {
    return way == Way.CURSOR ? 0 : TiffBlockCursor.workingBytes(picture, blocks);
  }

  @Override
  public long cursorBytes() {
    return way == Way.CURSOR ? cursors() * TiffBlockCursor.workingBytes(picture, blocks) : 0;
  }

  /** How many blocks hold pieces of one row of the picture. */
  int cursors() {
    return blocks.across() * planes().length;
  }

  @Override
  public FrameReader reader() {
    FrameFile own = file.again();
    return way == Way.CURSOR ? new TiffForwardReader(this, own) : new TiffRandomReader(this, own);
  }

  /** The planes that are read: those kept, or the only one. */
  int[] planes() {
    return picture.planar() ? picture.kept() : new int[1];
  }

  /** Reads a part from the top; the file is left open. */
  void readAll(FrameFile in, Region part, Consumer<Samples> rows, List<String> notices) {
    FrameReader reader =
        way == Way.CURSOR ? new TiffForwardReader(this, in) : new TiffRandomReader(this, in);
    for (int u = 0; u < units(); u++) {
      Region wanted = unit(u).meet(part);
      if (!wanted.empty()) {
        rows.accept(reader.read(u, wanted));
      }
    }
    notices.addAll(reader.notices());
  }

  TiffPicture picture() {
    return picture;
  }

  TiffKind kind() {
    return kind;
  }

  TiffBlocks blocks() {
    return blocks;
  }

  /** A new cursor over this picture's blocks. */
  TiffBlockCursor cursor(ByteSource in, Damage damage) {
    return new TiffBlockCursor(in, form.order(), picture, kind, blocks, damage);
  }

  /** An array for the samples of a region. */
  Object room(Region area) {
    int samples = Math.toIntExact(area.count() * kind.channels());
    return switch (kind.samples()) {
      case BYTES -> new byte[samples];
      case SHORTS -> new short[samples];
      case FLOATS -> new float[samples];
    };
  }

  /** The filled array as samples. */
  Samples samples(Region area, Object room) {
    if (room instanceof byte[] bytes) {
      return Samples.of(area, kind.channels(), bytes);
    }
    return room instanceof short[] shorts
        ? Samples.of(area, kind.channels(), shorts)
        : Samples.of(area, kind.channels(), (float[]) room);
  }
}
