package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.testing.TiffFile;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The eight orientations of EXIF 2.3 (tag 274), applied once, before anything has coordinates. */
class TurnTest {
  private static final int W = 70;
  private static final int H = 133;

  private static int stored(int x, int y, int c) {
    return x * 257 + y * 411 + c * 7 & 0xffff;
  }

  private static FrameSource open(TiffFile file) {
    return FrameSources.open(Disk.file("turn.tif", file.compression(8).predictor(2).bytes()));
  }

  private static TiffFile file(int orientation) {
    return new TiffFile(W, H, 3, 16, TurnTest::stored).strips(9).shorts(274, orientation);
  }

  /**
   * Where the stored 0th row and 0th column lie in the upright picture, by the words of the
   * standard: 1 top, left; 2 top, right; 3 bottom, right; 4 bottom, left; 5 left, top; 6 right,
   * top; 7 right, bottom; 8 left, bottom.
   */
  private static double upright(int orientation, int x, int y, int c) {
    boolean across = orientation >= 5;
    boolean rowAtFarSide =
        orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
    boolean columnAtFarSide =
        orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
    int row = across ? x : y;
    int column = across ? y : x;
    return stored(columnAtFarSide ? W - 1 - column : column, rowAtFarSide ? H - 1 - row : row, c);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
  void everyOrientationStandsUpright(int orientation) {
    FrameSource source = open(file(orientation));
    assertThat(source.info().width()).isEqualTo(orientation < 5 ? W : H);
    assertThat(source.info().height()).isEqualTo(orientation < 5 ? H : W);
    try (FrameReader reader = source.reader()) {
      for (int u = 0; u < source.units(); u++) {
        Samples s = reader.read(u);
        for (int y = s.area().top(); y < s.area().bottom(); y++) {
          for (int x = 0; x < s.area().right(); x++) {
            for (int c = 0; c < 3; c++) {
              double expected = upright(orientation, x, y, c);
              assertThat(SamplesText.value(s, x, y, c)).isEqualTo(expected);
            }
          }
        }
      }
    }
  }

  @Test
  void anOrientationWithoutMeaningIsNoticed() {
    FrameSource source = open(file(9));
    assertThat(source.info().width()).isEqualTo(W);
    assertThat(source.info().notices())
        .containsExactly(
            "The file's orientation is 9, which has no meaning; the picture is used as it is"
                + " stored.");
    assertThat(source.access()).isEqualTo(FrameSource.Access.RANDOM);
  }

  @Nested
  class Contract extends FrameSourceContract {
    @Override
    FrameSource source() {
      return open(file(6));
    }

    @Override
    double expected(int x, int y, int channel) {
      return upright(6, x, y, channel);
    }

    @Test
    void saysWhy() {
      assertThat(source().reason())
          .isEqualTo("TIFF stored on its side: decoded once, whole, and turned upright");
    }
  }
}
