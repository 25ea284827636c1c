package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.duskply.engine.pixel.Region;
import org.duskply.recipe.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ExtentTest {
  @ParameterizedTest
  @CsvSource({
    "6000, 4000, 6000, 4000, 0, 0, 6000, 4000",
    "6000, 4000, 600, 400, 0, 0, 6000, 4000",
    "6000, 4000, 1080, 1350, 1400, 0, 3200, 4000", // 4 : 5
    "4000, 6000, 1920, 1080, 0, 1875, 4000, 2250", // 16 : 9
    "6000, 4000, 1, 1, 1000, 0, 4000, 4000",
    "5, 4, 1, 1, 0, 0, 4, 4", // the one column too many falls off the right
    "4, 5, 1, 1, 0, 0, 4, 4",
    "6, 4, 3, 4, 1, 0, 3, 4",
    "7, 2, 3, 4, 2, 0, 2, 2", // 1.5 columns: half up
    "1, 1, 7, 3, 0, 0, 1, 1", // 0.43 rows: at least one
    "6000, 4000, 12000, 8000, 0, 0, 6000, 4000",
    "2147483647, 2147483647, 2147483647, 1, 0, 1073741823, 2147483647, 1"
  })
  void theLargestPartOfTheShapeAboutTheMiddle(
      int width, int height, int toWidth, int toHeight, int left, int top, int columns, int rows) {
    Size size = new Size(toWidth, toHeight);
    Extent extent = Extent.cropped(width, height, size);
    assertThat(extent.part()).isEqualTo(new Region(left, top, left + columns, top + rows));
    assertThat(extent.size()).isEqualTo(size);
  }

  /**
   * The part's shape is as near to the size's as whole pixels allow, and one side is kept whole.
   */
  @Property
  void keepsOneSideAndTheShape(
      @ForAll @IntRange(min = 1, max = 65_000) int width,
      @ForAll @IntRange(min = 1, max = 65_000) int height,
      @ForAll @IntRange(min = 1, max = 65_000) int toWidth,
      @ForAll @IntRange(min = 1, max = 65_000) int toHeight) {
    Region part = Extent.cropped(width, height, new Size(toWidth, toHeight)).part();
    assertThat(Region.ofSize(width, height).contains(part)).isTrue();
    assertThat(part.empty()).isFalse();
    assertThat(part.width() == width || part.height() == height).isTrue();
    double ratio = (double) toWidth / toHeight;
    boolean byRows = part.width() == width && Math.abs(part.width() / ratio - part.height()) < 1;
    boolean byColumns =
        part.height() == height && Math.abs(part.height() * ratio - part.width()) < 1;
    assertThat(byRows || byColumns).isTrue();
    assertThat(part.left() - (width - part.right())).isBetween(-1, 0);
    assertThat(part.top() - (height - part.bottom())).isBetween(-1, 0);
  }

  @ParameterizedTest
  @CsvSource({
    "600, 400, 600, false",
    "600, 400, 601, true",
    "400, 600, 599, false",
    "400, 600, 601, true"
  })
  void tellsAnEnlargement(int width, int height, int edge, boolean enlarges) {
    assertThat(Extent.longEdge(width, height, edge).enlarges()).isEqualTo(enlarges);
    assertThat(Extent.cropped(width, height, new Size(edge, edge)).enlarges())
        .isEqualTo(edge > 400);
  }

  @Test
  void wholeIsTheSameSizeAlone() {
    assertThat(Extent.cropped(60, 40, new Size(60, 40)).isWhole(60, 40)).isTrue();
    assertThat(Extent.longEdge(60, 40, 60).isWhole(60, 40)).isTrue();
    assertThat(Extent.longEdge(60, 40, 61).isWhole(60, 40)).isFalse();
    assertThat(Extent.cropped(60, 40, new Size(40, 40)).isWhole(60, 40)).isFalse();
  }
}
