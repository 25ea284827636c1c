package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class TimeLeftTest {
  private final List<String> heard = new ArrayList<>();
  private final AtomicLong nanos = new AtomicLong(7_000_000_000L);
  private final TimeLeft pace = new TimeLeft(new Heard(), nanos::get);

  @Test
  void theRestTakesAsLongAsThePaceSoFarSays() {
    after(4, 0.2);
    after(6, 0.5);
    after(9, 0.9);
    assertThat(heard)
        .containsExactly("left 16.0", "at 0.2", "left 6.0", "at 0.5", "left 1.0", "at 0.9");
  }

  @Test
  void nothingIsGuessedFromTooLittle() {
    after(0.4, 0.5);
    after(20, 0.01);
    assertThat(heard).containsExactly("at 0.5", "at 0.01");
  }

  @Test
  void atTheEndNothingIsLeft() {
    after(3, 1);
    assertThat(heard).containsExactly("left 0.0", "at 1.0");
  }

  private void after(double seconds, double share) {
    nanos.set(7_000_000_000L + Math.round(1e9 * seconds));
    pace.reached(share);
  }

  private final class Heard implements Progress {
    @Override
    public void left(Duration about) {
      heard.add("left " + about.toMillis() / 1000.0);
    }

    @Override
    public void reached(double share) {
      heard.add("at " + share);
    }
  }
}
