package org.duskply.engine.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShownProgressTest {
  @Test
  void tellsEachTenthOnceWithWhatIsLeft() {
    StringWriter text = new StringWriter();
    try (Interruption interruption = Interruption.watch();
        ShownProgress shown = new ShownProgress(new PrintWriter(text), false, interruption)) {
      shown.reached(0.05);
      shown.reached(0.12);
      shown.left(Duration.ofSeconds(42));
      shown.reached(0.31);
      shown.reached(0.39);
      shown.left(Duration.ofMillis(300));
      shown.reached(0.95);
      shown.left(Duration.ZERO);
      shown.reached(1);
    }
    assertThat(text.toString().lines())
        .containsExactly(
            "10 % rendered",
            "30 % rendered, about 42 s left", "90 % rendered, nearly done", "100 % rendered");
  }

  @ParameterizedTest
  @CsvSource({
    "0, nearly done",
    "1, about 1 s left",
    "99, about 99 s left",
    "100, about 2 min left",
    "3600, about 60 min left",
    "9000, about 2.5 h left"
  })
  void saysTimesNoFinerThanTheyAreKnown(long seconds, String words) {
    assertThat(ShownProgress.words(Duration.ofSeconds(seconds))).isEqualTo(words);
  }
}
