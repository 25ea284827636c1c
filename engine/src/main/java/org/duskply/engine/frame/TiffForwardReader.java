package org.duskply.engine.frame;

import org.duskply.engine.pixel.Region;
import org.jspecify.annotations.Nullable;

/**
 * Reads a plain TIFF picture in tall compressed blocks from the top down. One cursor for each block
 * side by side keeps its place between units; a unit further down passes over rows of its own
 * blocks alone, one further up begins its blocks again. For one thread at a time.
 */
final class TiffForwardReader implements FrameReader {
  private final TiffSource source;
  private final FrameFile file;
  private final @Nullable TiffBlockCursor[] cursors;

  TiffForwardReader(TiffSource source, FrameFile file) {
    this.source = source;
    this.file = file;
    this.cursors = new TiffBlockCursor[source.blocks().across()];
  }

  @Override
  public Samples read(int unit) {
    Region area = source.unit(unit);
    Object room = source.room(area);
    int height = source.blocks().height();
    for (int y = area.top(); y < area.bottom(); ) {
      int down = y / height;
      int rows = Math.min(area.bottom() - y, height - (y - down * height));
      for (int across = 0; across < cursors.length; across++) {
        readBlock(across, down, y, rows, area, room);
      }
      y += rows;
    }
    file.counters().countUnit();
    return source.samples(area, room);
  }

  private void readBlock(int across, int down, int y, int rows, Region area, Object room) {
    TiffBlocks blocks = source.blocks();
    int channels = source.picture().channels();
    int block = down * cursors.length + across;
    int left = across * blocks.width();
    TiffBlockCursor cursor = at(across, block, y - blocks.top(block));
    cursor.read(
        rows,
        Math.min(blocks.width(), area.right() - left),
        room,
        ((y - area.top()) * area.width() + left) * channels,
        area.width() * channels);
  }

  private TiffBlockCursor at(int across, int block, int row) {
    TiffBlockCursor cursor = cursors[across];
    if (cursor == null) {
      cursor = source.cursor(file);
      cursors[across] = cursor;
    }
    if (cursor.block() != block || cursor.nextRow() > row) {
      cursor.open(block);
    }
    cursor.skip(row - cursor.nextRow());
    return cursor;
  }

  @Override
  public void close() {
    for (TiffBlockCursor cursor : cursors) {
      if (cursor != null) {
        cursor.close();
      }
    }
    file.close();
  }
}
