package org.duskply.engine.frame;

import java.util.function.Consumer;
import org.duskply.engine.pixel.Region;

/**
 * A plain TIFF picture: 8- or 16-bit RGB or grey, uncompressed, deflated or LZW, in strips or
 * tiles. Three ways to reach its rows:
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
  private final TiffBlocks blocks;
  private final FrameInfo info;
  private final Way way;
  private final int unitRows;

  /** The file is asked for its name and counters, and opened again by each reader. */
  TiffSource(
      FrameFile file, TiffForm form, TiffPicture picture, TiffBlocks blocks, FrameInfo info) {
    this.file = file;
    this.form = form;
    this.picture = picture;
    this.blocks = blocks;
    this.info = info;
    long rowBytes = (long) picture.width() * picture.channels() * (picture.bits() / 8);
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
  public long workingBytes() {
    return way == Way.CURSOR ? 0 : TiffBlockCursor.workingBytes(picture, blocks);
  }

  @Override
  public long cursorBytes() {
    return way == Way.CURSOR ? blocks.across() * TiffBlockCursor.workingBytes(picture, blocks) : 0;
  }

  @Override
  public FrameReader reader() {
    FrameFile own = file.again();
    return way == Way.CURSOR ? new TiffForwardReader(this, own) : new TiffRandomReader(this, own);
  }

  /** Reads every unit from the top. */
  void readAll(FrameFile in, Consumer<Samples> rows) {
    FrameReader reader =
        way == Way.CURSOR ? new TiffForwardReader(this, in) : new TiffRandomReader(this, in);
    for (int u = 0; u < units(); u++) {
      rows.accept(reader.read(u));
    }
  }

  TiffPicture picture() {
    return picture;
  }

  TiffBlocks blocks() {
    return blocks;
  }

  /** A new cursor over this picture's blocks. */
  TiffBlockCursor cursor(ByteSource in) {
    return new TiffBlockCursor(in, form, picture, blocks);
  }

  /** An array for the samples of a region. */
  Object room(Region area) {
    int samples = Math.toIntExact(area.count() * picture.channels());
    return picture.bits() == 8 ? new byte[samples] : new short[samples];
  }

  /** The filled array as samples. */
  Samples samples(Region area, Object room) {
    return room instanceof byte[] bytes
        ? Samples.of(area, picture.channels(), bytes)
        : Samples.of(area, picture.channels(), (short[]) room);
  }
}
