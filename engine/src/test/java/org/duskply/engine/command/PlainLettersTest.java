package org.duskply.engine.command;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.US_ASCII;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import org.junit.jupiter.api.Test;

/** Words reach terminals of any charset so that they can be read. */
class PlainLettersTest {
  private static String printed(Charset charset, String text) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(bytes);
    Streams streams = Streams.of(stream, charset, stream, charset, false);
    streams.output().print(text);
    streams.output().flush();
    return bytes.toString(charset);
  }

  @Test
  void aCharsetThatHasEverySignChangesNothing() {
    String text = "3 × 2 → café, 0.5·(f − b) … 山 😀";
    assertThat(printed(UTF_8, text)).isEqualTo(text);
  }

  @Test
  void signsThatACharsetLacksAreWrittenInPlainLetters() {
    assertThat(printed(US_ASCII, "3 × 2 → 0.5·(f − b) …")).isEqualTo("3 x 2 -> 0.5*(f - b) ...");
    assertThat(printed(US_ASCII, "café, Ångström")).isEqualTo("cafe, Angstrom");
    assertThat(printed(US_ASCII, "山 😀 ß")).isEqualTo("? ? ?");
  }

  @Test
  void signsThatACharsetHasStay() {
    assertThat(printed(ISO_8859_1, "3 × 2 → café")).isEqualTo("3 × 2 -> café");
  }
}
