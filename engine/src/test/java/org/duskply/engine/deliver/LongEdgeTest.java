package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.duskply.recipe.Size;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LongEdgeTest {
  @ParameterizedTest
  @CsvSource({
    "6000, 4000, 2048, 2048, 1365", // 1365.33
    "4000, 6000, 2048, 1365, 2048",
    "6000, 4000, 6000, 6000, 4000",
    "3, 2, 1, 1, 1", // 0.67
    "4, 2, 1, 1, 1", // 0.5: half up
    "8, 3, 4, 4, 2", // 1.5: half up
    "30000, 2, 100, 100, 1", // 0.007: never 0
    "1, 1, 7, 7, 7",
    "2147483647, 2147483647, 2147483647, 2147483647, 2147483647",
    "2147483647, 1, 2147483647, 2147483647, 1"
  })
  void sizes(int width, int height, int edge, int newWidth, int newHeight) {
    assertThat(LongEdge.size(width, height, edge)).isEqualTo(new Size(newWidth, newHeight));
  }

  @Property
  void agreesWithDecimals(
      @ForAll @IntRange(min = 1) int a,
      @ForAll @IntRange(min = 1) int b,
      @ForAll @IntRange(min = 1) int edge) {
    int longer = Math.max(a, b);
    int shorter = Math.min(a, b);
    // Half the last digit of the quotient is told from a half by its remainder: 20 digits are
    // enough for quotients of whole numbers below 2³¹, whose distance from a half is 0 or over
    // 2⁻³².
    int expected =
        BigDecimal.valueOf(shorter)
            .multiply(BigDecimal.valueOf(edge))
            .divide(BigDecimal.valueOf(longer), 20, RoundingMode.HALF_UP)
            .setScale(0, RoundingMode.HALF_UP)
            .intValueExact();
    assertThat(LongEdge.size(longer, shorter, edge))
        .isEqualTo(new Size(edge, Math.max(1, expected)));
    assertThat(LongEdge.size(shorter, longer, edge).height()).isEqualTo(edge);
  }
}
