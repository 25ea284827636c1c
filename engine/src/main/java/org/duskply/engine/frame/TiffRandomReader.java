package org.duskply.engine.frame;

import java.util.List;
import org.duskply.engine.pixel.Region;

/**
 * Reads any unit of a TIFF picture at any time. No samples are kept between units, so that any
 * number of threads may read.
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
    Region area = source.unit(unit);
    TiffBlocks blocks = source.blocks();
    Object room = source.room(area);
    try (TiffBlockCursor cursor = source.cursor(file, damage)) {
      int first = area.top() / blocks.height() * blocks.across();
      int last = ((area.bottom() - 1) / blocks.height() + 1) * blocks.across();
      for (int plane : source.planes()) {
        int before = plane * blocks.across() * blocks.down();
        for (int block = first; block < last; block++) {
          readBlock(cursor, before + block, area, room);
        }
      }
    }
    file.counters().countUnit();
    return source.samples(area, room);
  }

  private void readBlock(TiffBlockCursor cursor, int block, Region area, Object room) {
    TiffBlocks blocks = source.blocks();
    int channels = source.kind().channels();
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
  public List<String> notices() {
    return damage.notices();
  }

  @Override
  public void close() {
    file.close();
  }
}
