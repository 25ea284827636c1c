package org.duskply.benchmarks.sidebyside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OptionsTest {
  private static final Path ROOT = Path.of("root").toAbsolutePath();

  private static Options options(String line) {
    return Options.of(ROOT, line.isEmpty() ? List.of() : List.of(line.split(" ")));
  }

  @Test
  void allOfThem() {
    Options options = options("--peers p --work w --rounds 5 --only W24,edit");
    assertThat(options.peers()).isEqualTo(Path.of("p").toAbsolutePath());
    assertThat(options.work()).isEqualTo(Path.of("w").toAbsolutePath());
    assertThat(options.rounds()).isEqualTo(5);
    assertThat(options.asksFor("W24")).isTrue();
    assertThat(options.asksFor("edit")).isTrue();
    assertThat(options.asksFor("W100")).isFalse();
  }

  @Test
  void withoutThem() {
    Options options = options("");
    assertThat(options.peers()).isNull();
    assertThat(options.work()).isEqualTo(ROOT.resolve("benchmarks/out"));
    assertThat(options.rounds()).isEqualTo(3);
    assertThat(options.asksFor("W100")).isTrue();
    assertThat(options.asksFor("small")).isFalse();
  }

  @ParameterizedTest
  @ValueSource(strings = {"--rounds", "--rounds 0", "--rounds x", "--fast yes", "W24"})
  void whatIsNotUnderstoodIsAnsweredWithAllThatIs(String line) {
    assertThatThrownBy(() -> options(line)).isInstanceOf(Refusal.class).hasMessage(Options.USAGE);
  }

  @Test
  void namesTheWorkloads() {
    assertThatThrownBy(() -> options("--only W25"))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "There is no workload W25; there are W24, W24-full, W24-full-zlib, W24-lzw, W24-jpeg, W100, W24-100MP, small, edit.");
  }
}
