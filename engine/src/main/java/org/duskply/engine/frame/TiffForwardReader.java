package org.duskply.engine.frame;

import java.util.List;
import org.duskply.engine.pixel.Region;
import org.jspecify.annotations.Nullable;

/**
 * Reads a TIFF picture in tall compressed blocks from the top down. One cursor for each block that
 * holds a piece of the same rows keeps its place between units; a unit further down passes over
 * rows of its own blocks alone, one further up begins its blocks again. For one thread at a time.
 */
final class TiffForwardReader implements FrameReader {
  private final TiffSource source;
  private final FrameFile file;
  private final Damage damage;
  private final int[] planes;
  private final @Nullable TiffBlockCursor[] cursors;

  TiffForwardReader(TiffSource source, FrameFile file) {
    this.source = source;
    this.file = file;
    this.damage = new Damage(file.tolerant());
    this.planes = source.planes();
    this.cursors = new TiffBlockCursor[source.cursors()];
  }

  @Override
  public Samples read(int unit) {
    return read(unit, source.unit(unit));
  }

  @Override
  public Samples read(int unit, Region part) {
    Region area = source.returned(unit, part);
    Object room = source.room(area);
    int height = source.blocks().height();
    for (int y = area.top(); y < area.bottom(); ) {
      int down = y / height;
      int rows = Math.min(area.bottom() - y, height - (y - down * height));
      for (int cursor = 0; cursor < cursors.length; cursor++) {
        readBlock(cursor, down, y, rows, area, room);
      }
      y += rows;
    }
    file.counters().countUnit();
    return source.samples(area, room);
  }

  private void readBlock(int index, int down, int y, int rows, Region area, Object room) {
    TiffBlocks blocks = source.blocks();
    int channels = source.kind().channels();
    int across = index % blocks.across();
    int plane = planes[index / blocks.across()];
    int block = (plane * blocks.down() + down) * blocks.across() + across;
    int blockLeft = across * blocks.width();
    int left = Math.max(area.left(), blockLeft);
    int right = Math.min(area.right(), blockLeft + blocks.width());
    if (left >= right) {
      return;
    }
    TiffBlockCursor cursor = at(index, block, y - blocks.top(block));
    cursor.read(
        rows,
        left - blockLeft,
        right - left,
        room,
        ((y - area.top()) * area.width() + left - area.left()) * channels,
        area.width() * channels);
  }

  private TiffBlockCursor at(int index, int block, int row) {
    TiffBlockCursor cursor = cursors[index];
    if (cursor == null) {
      cursor = source.cursor(file, damage);
      cursors[index] = cursor;
    }
    if (cursor.block() != block || cursor.nextRow() > row) {
      cursor.open(block);
    }
    cursor.skip(row - cursor.nextRow());
    return cursor;
  }

  @Override
  public List<String> notices() {
    return damage.notices();
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
