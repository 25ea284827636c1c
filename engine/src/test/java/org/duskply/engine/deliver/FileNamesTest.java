package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FileNamesTest {
  private static final LocalDateTime DUSK = LocalDateTime.of(2031, 3, 4, 17, 5, 9);

  private static NameValues values(String title, @Nullable LocalDateTime shot) {
    return new NameValues("boathouse", title, "no-fire", "web", 2048, 1365, shot);
  }

  private static String resolve(String template) {
    return FileNames.resolve(template, values("Boathouse café", DUSK));
  }

  @ParameterizedTest
  @CsvSource({
    "out/<title>.tif, out/Boathouse café.tif",
    "<recipe>-<alternate>-<deliverable>-<width>x<height>.jpg, boathouse-no-fire-web-2048x1365.jpg",
    "<shot:yyyy-MM-dd>.png, 2031-03-04.png",
    "<shot:yyyy>/<shot:dd.MM_HH mm-ss>.png, 2031/04.03_17 05-09.png",
    "plain.tif, plain.tif"
  })
  void fills(String template, String name) {
    assertThat(resolve(template)).isEqualTo(name);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<tilte>.tif",
        "<shot>.tif",
        "<shot:YYYY>.tif",
        "<shot:>.tif",
        "<Title>.tif",
        "<>.tif",
        "a<b.tif",
        "a>b.tif",
        "<<title>>.tif",
        "/a.tif",
        "a//b.tif",
        "a/",
        "../a.tif",
        "a/../b.tif",
        "./a.tif",
        "a\\b.tif",
        "C:a.tif",
        "",
        ".tif",
        "a/.b/c.tif"
      })
  void refuses(String template) {
    assertThat(FileNames.problem(template)).isNotNull().endsWith(".");
    assertThatThrownBy(() -> resolve(template)).isInstanceOf(DeliverException.class);
  }

  @Test
  void namesThePlaceholderThatIsUnknown() {
    assertThat(FileNames.problem("<tilte>.tif"))
        .isEqualTo(
            "<tilte> is no placeholder; there are <recipe>, <title>, <alternate>, <deliverable>,"
                + " <width>, <height> and <shot:yyyy-MM-dd>.");
  }

  @Test
  void saysWhenTheCaptureTimeIsMissing() {
    assertThat(FileNames.asksForShot("<shot:yyyy>.tif")).isTrue();
    assertThatThrownBy(() -> FileNames.resolve("<shot:yyyy>.tif", values("x", null)))
        .hasMessage(
            "The file name asks for <shot:yyyy>, but the base frame does not say when it was taken;"
                + " leave it out or use a base frame with its camera's record.");
  }

  @Test
  void limitsTheTemplate() {
    assertThat(FileNames.problem("a".repeat(1_001))).contains("1000").contains("1001");
    assertThat(FileNames.problem("a/".repeat(16) + "b.tif")).contains("15 folders");
    assertThat(FileNames.problem("a/".repeat(15) + "b.tif")).isNull();
  }

  /** A value is a stranger's: it must not open a folder, hide a file or name a device. */
  @ParameterizedTest
  @CsvSource({
    "../../etc/passwd, -..-etc-passwd.tif",
    "a/b\\c:d*e?f|g, a-b-c-d-e-f-g.tif",
    "...hidden, hidden.tif",
    "con, con_.tif",
    "COM1.x, COM1_.x.tif",
    "nul , nul_.tif",
    "console, console.tif",
    "a\u202Egpj\u0000\u0007b, agpjb.tif",
    "'', -.tif",
    "' . ', -.tif",
    "..., -.tif",
    "cafe\u0301, caf\u00E9.tif",
    "a$1\\2, a$1-2.tif"
  })
  void makesValuesSafe(String title, String name) {
    assertThat(FileNames.resolve("<title>.tif", values(title, DUSK))).isEqualTo(name);
  }

  @Test
  void replacesHalfACharacter() {
    assertThat(FileNames.resolve("<title>.tif", values("a\uD800b", DUSK))).isEqualTo("a-b.tif");
  }

  @Test
  void shortensAtAWholeCharacterAndKeepsTheEnding() {
    String name = FileNames.resolve("<title>.tif", values("🏮".repeat(80) + "x", DUSK));
    assertThat(name).isEqualTo("🏮".repeat(48) + ".tif"); // (200 − 1 − 4) bytes hold 48 of 4
    String long2 = FileNames.resolve("<title>.tif", values("é".repeat(1_000_000), DUSK));
    assertThat(long2.getBytes(StandardCharsets.UTF_8).length).isBetween(190, SafeName.MAX_BYTES);
  }

  @Property
  void anyTitleGivesOnePartThatStaysInItsFolder(@ForAll String title) {
    String name = FileNames.resolve("<title>.tif", values(title, DUSK));
    assertThat(name).doesNotContain("/", "\\", "\0").endsWith(".tif").doesNotStartWith(".");
    assertThat(name.getBytes(StandardCharsets.UTF_8).length)
        .isLessThanOrEqualTo(SafeName.MAX_BYTES);
    assertThat(SafeName.part(name)).as("nothing left to mend").isEqualTo(name);
    Path out = Path.of("out");
    assertThat(OutFolder.file(out, name)).hasParentRaw(out);
  }

  /** The Turkish dotless i turns TITLE into another word where a locale decides. */
  @Test
  void noLocaleDecides() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(new Locale.Builder().setLanguage("tr").setRegion("TR").build());
      assertThat(FileNames.resolve("<title>.tif", values("PRN", DUSK))).isEqualTo("PRN_.tif");
      assertThat(FileNames.resolve("<title>.tif", values("LPT1", DUSK))).isEqualTo("LPT1_.tif");
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      assertThat(resolve("<width>-<shot:yyyy>.tif")).isEqualTo("2048-2031.tif");
    } finally {
      Locale.setDefault(before);
    }
  }
}
