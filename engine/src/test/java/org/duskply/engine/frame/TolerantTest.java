package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import org.duskply.engine.testing.JpegBytes;
import org.duskply.engine.testing.PngFile;
import org.duskply.engine.testing.TiffFile;
import org.junit.jupiter.api.Test;

/**
 * Files that are cut short or spoilt: strictly, one sentence with the first bad row; tolerantly,
 * the rows that are there, grey for the others, and one notice.
 */
class TolerantTest {
  private static final int WIDTH = 40;
  private static final int HEIGHT = 300;

  /** What a tolerant reading made of a file. */
  private record Kept(List<Samples> units, List<String> notices) {
    double at(int x, int y, int c) {
      for (Samples s : units) {
        if (y >= s.area().top() && y < s.area().bottom()) {
          return SamplesText.value(s, x, y, c);
        }
      }
      throw new AssertionError("row " + y);
    }
  }

  private static int sample(int x, int y, int c) {
    return (x * 7 + y * 3 + c * 50) % 251;
  }

  private static Kept tolerant(Path file) {
    FrameSource source = FrameSources.open(file, new ReadCounters(), true);
    List<Samples> units = new ArrayList<>();
    try (FrameReader reader = source.reader()) {
      for (int u = 0; u < source.units(); u++) {
        units.add(reader.read(u));
      }
      return new Kept(units, reader.notices());
    }
  }

  private static void strict(Path file, String sentence) {
    assertThatThrownBy(
            () -> {
              FrameSource source = FrameSources.open(file);
              try (FrameReader reader = source.reader()) {
                for (int u = 0; u < source.units(); u++) {
                  reader.read(u);
                }
              }
            })
        .isInstanceOf(FrameException.class)
        .hasMessage(file.getFileName() + " " + sentence);
  }

  /** All rows above are the stored ones, all from there on are grey. */
  private static void keptAbove(Kept kept, int bad, double grey) {
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x += 13) {
        double wanted = y < bad ? sample(x, y, 1) : grey;
        assertThat(kept.at(x, y, 1)).as("row %d", y).isEqualTo(wanted);
      }
    }
    assertThat(kept.notices())
        .containsExactly(
            "Between its rows "
                + bad
                + " and 299 some are missing or damaged; they are left grey, or as they could be"
                + " decoded.");
  }

  private static TiffFile tiff(int compression) {
    return new TiffFile(WIDTH, HEIGHT, 3, 8, TolerantTest::sample).compression(compression);
  }

  /** The first 60 % of a block. */
  private static UnaryOperator<byte[]> cut() {
    return b -> Arrays.copyOf(b, b.length * 6 / 10);
  }

  @Test
  void oneTallBlockOfEachCompression() {
    for (int compression : new int[] {5, 8, 32773}) {
      Path file = Disk.file("cut" + compression + ".tif", tiff(compression).damage(cut()).bytes());
      int bad = firstBad(file);
      assertThat(bad).isBetween(60, 290);
      strict(file, "is damaged: the rows from " + bad + " down cannot be unpacked.");
      keptAbove(tolerant(file), bad, 127);
    }
  }

  private static int firstBad(Path file) {
    Kept kept = tolerant(file);
    for (int y = 0; y < HEIGHT; y++) {
      if (kept.at(0, y, 1) != sample(0, y, 1) || kept.at(39, y, 1) != sample(39, y, 1)) {
        return y;
      }
    }
    return HEIGHT;
  }

  /** Strips behind the file's end: what lies before them is kept. */
  @Test
  void stripsBehindTheEnd() {
    TiffFile file = tiff(1).strips(100);
    byte[] bytes = file.longs(273, 16, 12016, 900_000).bytes();
    Path path = Disk.file("far.tif", bytes);
    strict(path, "is cut short: the rows from 200 down are not all there.");
    keptAbove(tolerant(path), 200, 127);
  }

  /** A plane that is spoilt spoils its colour alone. */
  @Test
  void onePlane() {
    int[] seen = {0};
    Path path =
        Disk.file(
            "plane.tif",
            tiff(32773).planar().damage(b -> seen[0]++ == 1 ? cut().apply(b) : b).bytes());
    Kept kept = tolerant(path);
    assertThat(kept.at(5, 299, 0)).isEqualTo(sample(5, 299, 0));
    assertThat(kept.at(5, 299, 1)).isEqualTo(127);
    assertThat(kept.at(5, 299, 2)).isEqualTo(sample(5, 299, 2));
    assertThat(kept.notices()).hasSize(1);
  }

  /** Sorted floats whose packed bytes end early, tiled; grey is 0.5. */
  @Test
  void floats() {
    Path path =
        Disk.file(
            "floats.tif",
            new TiffFile(WIDTH, 64, 1, 32, (x, y, c) -> Float.floatToRawIntBits(x + y))
                .shorts(339, 3)
                .compression(8)
                .predictor(3)
                .tiles(64, 64)
                .damage(cut())
                .bytes());
    Kept kept = tolerant(path);
    assertThat(kept.at(3, 0, 0)).isEqualTo(3);
    assertThat(kept.at(3, 63, 0)).isEqualTo(0.5);
    assertThat(kept.notices()).hasSize(1);
  }

  /** Stored on its side, so that rows become columns. */
  @Test
  void turned() {
    Path path = Disk.file("side.tif", tiff(8).shorts(274, 6).damage(cut()).bytes());
    Kept kept = tolerant(path);
    assertThat(kept.at(HEIGHT - 1, 0, 1)).isEqualTo(sample(0, 0, 1));
    assertThat(kept.at(0, 0, 1)).isEqualTo(127);
    assertThat(kept.notices()).hasSize(1);
  }

  @Test
  void png() {
    byte[] whole = new PngFile(WIDTH, HEIGHT, 2, 8, TolerantTest::sample).bytes();
    Path path = Disk.file("cut.png", Arrays.copyOf(whole, whole.length * 6 / 10));
    int bad = firstBad(path);
    assertThat(bad).isBetween(60, 290);
    strict(path, "is cut short or damaged: it cannot be decoded from row " + bad + " down.");
    keptAbove(tolerant(path), bad, 127);
  }

  @Test
  void jpeg() {
    byte[] whole = JpegBytes.raw(WIDTH, HEIGHT, 1, (x, y, c) -> sample(x, y, 0)).bytes();
    Path path = Disk.file("cut.jpg", Arrays.copyOf(whole, whole.length * 6 / 10));
    Kept kept = tolerant(path);
    assertThat(kept.at(0, 8, 0)).isBetween(sample(0, 8, 0) - 3.0, sample(0, 8, 0) + 3.0);
    assertThat(kept.notices()).hasSize(1);
    assertThatThrownBy(() -> FrameSources.open(path).reader().read(0))
        .hasMessageMatching(
            "cut\\.jpg is cut short or damaged: its rows from 1[0-9][0-9] down are not all there\\.");
  }

  /** What is no picture at all stays refused. */
  @Test
  void someThingsCannotBeGoneOnFrom() {
    for (byte[] bytes :
        new byte[][] {
          new byte[0], {'I', 'I', 42, 0, 0, 0, 0, 99}, Arrays.copyOf(tiff(8).bytes(), 300)
        }) {
      Path path = Disk.file("none.tif", bytes);
      assertThatThrownBy(() -> tolerant(path)).isInstanceOf(FrameException.class);
    }
    Path shared = Disk.file("shared.tif", tiff(1).strips(100).longs(273, 16, 2000, 24016).bytes());
    assertThatThrownBy(() -> tolerant(shared)).hasMessageContaining("share the same bytes");
  }
}
