package org.duskply.benchmarks.sidebyside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.duskply.benchmarks.workload.PictureFile;
import org.duskply.engine.deliver.Sink;
import org.duskply.engine.deliver.Sinks;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PictureDifferenceTest {
  private static final int WIDTH = 20;

  @TempDir Path folder;

  /** Black, but for the rows from {@code white} on. */
  private Path picture(String name, Compress compress, int height, int white) {
    Path file = folder.resolve(name);
    Region whole = Region.ofSize(WIDTH, height);
    try (Sink sink = Sinks.open(PictureFile.spec(file, Format.TIFF, compress, WIDTH, height))) {
      for (int band = 0; band < sink.bands(); band++) {
        int top = band * PictureFile.BAND_ROWS;
        Planes rows = new Planes(whole.rows(top, top + PictureFile.BAND_ROWS), 3);
        for (int y = Math.max(top, white); y < rows.area().bottom(); y++) {
          for (int c = 0; c < 3; c++) {
            Arrays.fill(rows.plane(c), rows.at(0, y), rows.at(0, y) + WIDTH, 1);
          }
        }
        sink.append(band, sink.encode(band, rows));
      }
      sink.commit();
    }
    return file;
  }

  /** Black to white is 100: the divisor of lightness is 1 at the mean lightness of 50. */
  @Test
  void theMeanOfAllPixelsHoweverTheFilesArePacked() {
    Path black = picture("black.tif", Compress.DEFLATE, 200, 200);
    Path half = picture("half.tif", Compress.LZW, 200, 150);
    assertThat(PictureDifference.mean(black, half)).isCloseTo(25, within(1e-6));
    assertThat(PictureDifference.mean(half, picture("same.tif", Compress.NONE, 200, 150))).isZero();
  }

  @Test
  void refusesWhatCannotBeCompared() throws Exception {
    Path picture = picture("1.tif", Compress.DEFLATE, 100, 0);
    Path lower = picture("2.tif", Compress.DEFLATE, 90, 0);
    assertThatThrownBy(() -> PictureDifference.mean(picture, lower))
        .isInstanceOf(Refusal.class)
        .hasMessageEndingWith("are of different sizes.");
    Path text = Files.writeString(folder.resolve("3.tif"), "no picture", StandardCharsets.UTF_8);
    assertThatThrownBy(() -> PictureDifference.mean(picture, text))
        .isInstanceOf(Refusal.class)
        .hasMessageEndingWith("3.tif cannot be read as a picture.");
  }
}
