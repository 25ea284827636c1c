package org.duskply.engine.frame;

import org.duskply.engine.pixel.Region;

/**
 * Reads any unit of a plain TIFF picture at any time. Nothing is kept between units, so that any
 * number of threads may read.
 */
final class TiffRandomReader implements FrameReader {
  private final TiffSource source;
  private final FrameFile file;

  TiffRandomReader(TiffSource source, FrameFile file) {
    this.source = source;
    this.file = file;
  }

  @Override
  public Samples read(int unit) {
    Region area = source.unit(unit);
    TiffBlocks blocks = source.blocks();
    Object room = source.room(area);
    try (TiffBlockCursor cursor = source.cursor(file)) {
      int first = area.top() / blocks.height();
      int last = (area.bottom() - 1) / blocks.height();
      for (int block = first * blocks.across(); block < (last + 1) * blocks.across(); block++) {
        readBlock(cursor, block, area, room);
      }
    }
    file.counters().countUnit();
    return source.samples(area, room);
  }

  private void readBlock(TiffBlockCursor cursor, int block, Region area, Object room) {
    TiffBlocks blocks = source.blocks();
    int channels = source.picture().channels();
    int left = block % blocks.across() * blocks.width();
    int blockTop = blocks.top(block);
    int top = Math.max(area.top(), blockTop);
    int rows = Math.min(area.bottom(), blockTop + blocks.height()) - top;
    cursor.open(block);
    cursor.skip(top - blockTop);
    cursor.read(
        rows,
        Math.min(blocks.width(), area.right() - left),
        room,
        ((top - area.top()) * area.width() + left) * channels,
        area.width() * channels);
  }

  @Override
  public void close() {
    file.close();
  }
}
