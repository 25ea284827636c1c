package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.pixel.Region;
import org.duskply.engine.testing.TiffFile;
import org.junit.jupiter.api.Test;

/** Only what is asked for is read: proven by counters, not by time. */
class DecodeCountTest {
  private static long readOneUnit(TiffFile file, int unit) {
    return readPart(file, unit, Region.EVERYWHERE);
  }

  private static long readPart(TiffFile file, int unit, Region part) {
    ReadCounters counters = new ReadCounters();
    FrameSource source = FrameSources.open(Disk.file("count.tif", file.bytes()), counters);
    long before = counters.bytes();
    try (FrameReader reader = source.reader()) {
      reader.read(unit, source.unit(unit).meet(part));
    }
    assertThat(counters.units()).isEqualTo(1);
    return counters.bytes() - before;
  }

  private static TiffFile file() {
    return new TiffFile(100, 640, 3, 16, (x, y, c) -> x * 31 + y * 7 + c);
  }

  @Test
  void oneUnitOfStripsReadsItsStripsAlone() {
    assertThat(readOneUnit(file().strips(64), 7)).isEqualTo(64 * 600);
    assertThat(readOneUnit(file().strips(8), 9)).isEqualTo(16 * 600);
    assertThat(readOneUnit(file(), 3)).isEqualTo(64 * 600);
  }

  @Test
  void aRowOfTilesReadsItsTilesAlone() {
    assertThat(readOneUnit(file().tiles(32, 64), 5)).isEqualTo(4 * 32 * 64 * 6);
  }

  @Test
  void aPartReadsItsRowsOfItsBlocksAlone() {
    Region rows = new Region(0, 150, 100, 154); // of two strips
    assertThat(readPart(file().strips(8), 9, rows)).isEqualTo(4 * 600);
    Region columns = new Region(40, 330, 90, 340); // of two tiles of four
    assertThat(readPart(file().tiles(32, 64), 5, columns)).isEqualTo(2 * 32 * 10 * 6);
  }

  @Test
  void openingReadsHeadersAlone() {
    ReadCounters counters = new ReadCounters();
    FrameSources.open(Disk.file("count.tif", file().strips(64).bytes()), counters);
    assertThat(counters.bytes()).isLessThan(2_000);
    assertThat(counters.units()).isZero();
  }
}
