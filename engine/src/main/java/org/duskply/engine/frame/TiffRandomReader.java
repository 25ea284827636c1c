package org.duskply.engine.frame;

import java.util.List;
import org.duskply.engine.pixel.Region;

/**
 * Reads any unit of a TIFF picture at any time, and of its blocks those alone that hold something
 * of the part asked for, down to the last row of it. Nothing is kept between units, so that any
 * number of threads may read, and a hundred open frames take no room.
 */
final class TiffRandomReader implements FrameReader {
  private final TiffSource source;
  private final FrameFile file;
  private final Damage damage;

  TiffRandomReader(TiffSource source, FrameFile file) {
    this.source = source;
    this.file = file;
    this.damage = new Damage(file.tolerant());
  }

  @Override
  public Samples read(int unit) {
    return read(unit, source.unit(unit));
  }

  @Override
  public Samples read(int unit, Region part) {
    Region area = source.returned(unit, part);
    TiffBlocks blocks = source.blocks();
    Object room = source.room(area);
    try (TiffBlockCursor cursor = source.cursor(file, damage)) {
      for (int plane : source.planes()) {
        readBlocks(cursor, plane * blocks.across() * blocks.down(), area, room);
      }
    }
    file.counters().countUnit();
    return source.samples(area, room);
  }

  /** Reads what lies in an area of the plane whose first block is {@code origin}. */
  private void readBlocks(TiffBlockCursor cursor, int origin, Region area, Object room) {
    TiffBlocks blocks = source.blocks();
    int lastDown = (area.bottom() - 1) / blocks.height();
    int lastAcross = (area.right() - 1) / blocks.width();
    for (int down = area.top() / blocks.height(); down <= lastDown; down++) {
      for (int across = area.left() / blocks.width(); across <= lastAcross; across++) {
        readBlock(cursor, origin + down * blocks.across() + across, area, room);
      }
    }
  }

  private void readBlock(TiffBlockCursor cursor, int block, Region area, Object room) {
    TiffBlocks blocks = source.blocks();
    int channels = source.kind().channels();
    int blockLeft = block % blocks.across() * blocks.width();
    int left = Math.max(area.left(), blockLeft);
    int blockTop = blocks.top(block);
    int top = Math.max(area.top(), blockTop);
    int rows = Math.min(area.bottom(), blockTop + blocks.height()) - top;
    cursor.open(block);
    cursor.skip(top - blockTop);
    cursor.read(
        rows,
        left - blockLeft,
        Math.min(blockLeft + blocks.width(), area.right()) - left,
        room,
        ((top - area.top()) * area.width() + left - area.left()) * channels,
        area.width() * channels);
  }

  @Override
  public List<String> notices() {
    return damage.notices();
  }

  @Override
  public void close() {
    file.close();
  }
}
