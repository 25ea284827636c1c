package org.duskply.benchmarks.sidebyside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class SeriesTest {
  @Test
  void theMiddleOfAnOddNumber() {
    Series series = new Series(List.of(9.0, 1.0, 4.0));
    assertThat(series.median()).isEqualTo(4);
    assertThat(series.least()).isEqualTo(1);
    assertThat(series.greatest()).isEqualTo(9);
  }

  @Test
  void theMeanOfTheTwoMiddleOnesOfAnEvenNumber() {
    assertThat(new Series(List.of(8.0, 1.0, 2.0, 100.0)).median()).isEqualTo(5);
    assertThat(new Series(List.of(3.0)).median()).isEqualTo(3);
  }

  @Test
  void noRoundIsNoSeries() {
    assertThatThrownBy(() -> new Series(List.of())).isInstanceOf(IllegalArgumentException.class);
  }
}
