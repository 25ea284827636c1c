package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.duskply.recipe.deliver.Metadata;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CaptionsTest {
  private static Captions caption(String text) {
    return Captions.NONE.with(CaptionField.CAPTION, text);
  }

  @ParameterizedTest
  @ValueSource(
      ints = {
        0, 1, 7, 8, 0x0B, 0x1B, 0x1F, 0x7F, 0x80, 0x85, 0x9F, 0xD800, 0xDFFF, 0xFFFE, 0xFFFF,
        0x1FFFE
      })
  void refusesWhatIsNotText(int c) {
    String text = "before " + Character.toString(c) + " after";
    assertThatThrownBy(() -> caption(text))
        .isInstanceOf(DeliverException.class)
        .hasMessage(
            String.format(
                "The caption of the metadata holds U+%04X, a code that is not text and that no file"
                    + " can hold; delete it.",
                c));
    assertThatThrownBy(() -> Captions.NONE.with(CaptionField.ALT_TEXT, text))
        .hasMessageStartingWith("The alt-text of the metadata");
  }

  /** XML 1.0 section 2.2: whatever else there is can be written, and is read as it was. */
  @Test
  void allOtherCharactersGoThroughXml() throws Exception {
    StringBuilder all = new StringBuilder("\t\n]]>&lt;\"'");
    IntStream.rangeClosed(0x20, 0x10FFFF)
        .filter(c -> c < 0x7F || c > 0x9F)
        .filter(c -> c < 0xD800 || c > 0xDFFF)
        .filter(c -> (c & 0xFFFE) != 0xFFFE)
        .filter(c -> c < 0x3000 || c % 97 == 0)
        .forEach(all::appendCodePoint);
    byte[] packet = XmpPacket.of(caption(all.toString()));
    String read =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(packet))
            .getElementsByTagName("dc:description")
            .item(0)
            .getTextContent();
    assertThat(read).isEqualTo(all.toString());
  }

  @Test
  void lineEndsBecomeLineFeedsAndBlankTextsNothing() {
    assertThat(caption("a\r\nb\rc\nd").values(CaptionField.CAPTION)).containsExactly("a\nb\nc\nd");
    assertThat(caption(" \n\t ")).isEqualTo(Captions.NONE);
    assertThat(caption(null)).isEqualTo(Captions.NONE);
    assertThat(Captions.NONE.with(CaptionField.KEYWORDS, List.of("a", " ", "b")).texts())
        .isEqualTo(Map.of(CaptionField.KEYWORDS, List.of("a", "b")));
  }

  @Test
  void aRecipesTitleStandsInWhereThereAreCaptions() {
    LocalDateTime taken = LocalDateTime.of(2026, 3, 9, 18, 5, 7);
    assertThat(Captions.of(Metadata.NONE, "working title", taken))
        .isEqualTo(new Captions("Duskply", taken, Map.of()));
    Metadata credit =
        new Metadata(null, null, null, null, List.of(), "A. Keeper", null, null, null, Map.of());
    assertThat(Captions.of(credit, "House", null).values(CaptionField.TITLE))
        .containsExactly("House");
    assertThat(Captions.of(credit, null, null).values(CaptionField.TITLE)).isEmpty();
    Metadata titled = new Metadata("T", "C", "©", "D", List.of("K"), "R", "U", "L", "A", Map.of());
    Captions captions = Captions.of(titled, "House", null);
    String[] values = {"T", "K", "C", "L", "R", "©", "D", "U", "A"};
    for (CaptionField field : CaptionField.values()) {
      assertThat(captions.values(field)).containsExactly(values[field.ordinal()]);
    }
  }

  /** Never inside a character: bytes of UTF-8, surrogates, marks and joined signs stay together. */
  @ParameterizedTest
  @CsvSource({
    "abc, 3, abc",
    "abcd, 3, abc",
    "aé, 2, a",
    "aé, 3, aé",
    "夕暮, 5, 夕",
    "a🛶, 4, a",
    "a🛶, 5, a🛶",
    "ae\u0301, 2, a", // e and a combining acute accent
    "ae\u0301, 4, ae\u0301",
    "x\uD83D\uDC69\u200D\uD83C\uDFA8, 8, x", // a woman, a joiner and a palette: 4 + 3 + 4 bytes
    "x\uD83D\uDC69\u200D\uD83C\uDFA8, 12, x\uD83D\uDC69\u200D\uD83C\uDFA8",
    "x\uD83D\uDC4B\uD83C\uDFFD, 8, x", // a hand and a tone of skin
    "'e\u0301', 2, ''"
  })
  void cutsBetweenCharacters(String text, int most, String cut) {
    assertThat(new String(IimRecord.cut(text, most), StandardCharsets.UTF_8)).isEqualTo(cut);
  }

  /** Dataset by dataset: IPTC-IIM 4.2 section 1.5 and 1.6 (from memory). */
  @Test
  void recordsAreTheStandards() {
    Captions captions =
        new Captions(
            "Duskply",
            LocalDateTime.of(2026, 3, 9, 18, 5),
            Map.of(CaptionField.KEYWORDS, List.of("a", "b")));
    assertThat(IimRecord.of(captions))
        .containsExactly(
            0x1C, 1, 90, 0, 3, 0x1B, '%', 'G', 0x1C, 2, 0, 0, 2, 0, 4, 0x1C, 2, 55, 0, 8, '2', '0',
            '2', '6', '0', '3', '0', '9', 0x1C, 2, 25, 0, 1, 'a', 0x1C, 2, 25, 0, 1, 'b');
  }
}
