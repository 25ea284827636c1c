package org.duskply.benchmarks.sidebyside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class CostTest {
  /** GNU time counts resident memory in units of 1024 bytes. */
  @Test
  void addsUpTheProcessorAndCountsMemoryInBytes() {
    Cost cost = Cost.of("12.50 20.25 1.50 1000\n");
    assertThat(cost).isEqualTo(new Cost(12.5, 21.75, 1_024_000));
    assertThat(Cost.Measure.PEAK.of(cost)).isCloseTo(1.024, within(1e-12));
    assertThat(cost.without(1.75)).isEqualTo(new Cost(12.5, 20, 1_024_000));
  }

  @Test
  void refusesWhatIsNoSuchLine() {
    assertThatThrownBy(() -> Cost.of("Command exited with non-zero status 1"))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
