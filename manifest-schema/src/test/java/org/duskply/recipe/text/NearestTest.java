package org.duskply.recipe.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {
  private static final List<String> KNOWN = List.of("mask", "opacity", "title", "skip", "x");

  @ParameterizedTest
  @CsvSource({
    "opactiy, opacity", // two letters swapped
    "opacit, opacity", // one too few
    "oppacity, opacity", // one too many
    "OPACITY, opacity",
    "maks, mask",
    "tittle, title",
    "skp, skip"
  })
  void findsWhatWasMeant(String typed, String meant) {
    assertThat(Nearest.among(KNOWN, typed)).isEqualTo(meant);
  }

  @ParameterizedTest
  @CsvSource({"glow", "y", "transparency", "ab"})
  void findsNothingWhereNothingIsNear(String typed) {
    assertThat(Nearest.among(KNOWN, typed)).isNull();
  }

  /** Restricted edit distance, Damerau 1964; the third pair shows that no part is swapped twice. */
  @Test
  void distances() {
    assertThat(Nearest.slips("kitten", "sitting")).isEqualTo(3);
    assertThat(Nearest.slips("", "abc")).isEqualTo(3);
    assertThat(Nearest.slips("ca", "abc")).isEqualTo(3);
    assertThat(Nearest.slips("ab", "ba")).isEqualTo(1);
  }

  @Test
  void aLongNameIsNotCompared() {
    assertThat(Nearest.among(KNOWN, "m".repeat(100_000))).isNull();
  }
}
