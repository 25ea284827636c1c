package org.duskply.engine.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.ServerSocket;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.duskply.engine.DuskplyException;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files made to hurt: each is refused in one sentence, or read as far as it is a drawing. */
class SvgTrapsTest {
  private static final String SVG = "<svg xmlns='http://www.w3.org/2000/svg'>";
  private static final String DOOR = "<rect id='door' width='4' height='5'/>";

  @TempDir Path folder;

  private static Drawing read(String text) {
    return read(text.getBytes(StandardCharsets.UTF_8));
  }

  private static Drawing read(byte[] bytes) {
    return Assertions.assertTimeoutPreemptively(
        Duration.ofSeconds(60), () -> Drawing.read("o.svg", bytes));
  }

  private static int shapes(Drawing drawing) {
    return Assertions.assertTimeoutPreemptively(
        Duration.ofSeconds(60), () -> shapes(drawing, List.of()).size());
  }

  private static List<DrawnShape> shapes(Drawing drawing, List<String> ids) {
    return drawing.shapes(
        ids,
        10,
        10,
        (place, fault) -> {
          throw fault;
        });
  }

  @Test
  void entitiesAreNeverExpandedNorFetched() throws IOException {
    Path secret = Files.writeString(folder.resolve("secret.txt"), "M0 0h9v9z");
    String outside = "<!DOCTYPE svg [<!ENTITY x SYSTEM '" + secret.toUri() + "'>]>";
    String inside = "<!DOCTYPE svg [<!ENTITY x 'M0 0h9v9z'>]>";
    for (String declared : List.of(outside, inside)) {
      for (String use : List.of("<path d='&x;'/>", "<text>&x;</text>", "<path d='M0 0h9v9z'/>")) {
        assertThatThrownBy(() -> read(declared + SVG + use + "</svg>"))
            .isInstanceOf(DrawingException.class)
            .hasMessageContaining("entities");
      }
    }
    String parameter = "<!DOCTYPE svg [<!ENTITY % p SYSTEM '" + secret.toUri() + "'> %p;]>";
    assertThatThrownBy(() -> read(parameter + SVG + "</svg>")).hasMessageContaining("entities");
    String defaults = "<!DOCTYPE svg [<!ATTLIST path d CDATA 'M0 0h9v9z'>]>";
    assertThatThrownBy(() -> read(defaults + SVG + "<path/></svg>"))
        .hasMessageContaining("entities");
  }

  @Test
  void aThousandLaughsAreNotLaughed() {
    StringBuilder bomb = new StringBuilder("<!DOCTYPE svg [<!ENTITY a0 'ha'>");
    for (int i = 1; i < 40; i++) {
      bomb.append("<!ENTITY a").append(i).append(" '");
      bomb.append(("&a" + (i - 1) + ";").repeat(10)).append("'>");
    }
    bomb.append("]>").append(SVG).append("<text>&a39;</text></svg>");
    assertThatThrownBy(() -> read(bomb.toString())).hasMessageContaining("entities");
  }

  @Test
  void anUndeclaredEntityIsNoText() {
    assertThatThrownBy(() -> read(SVG + "<text>&nope;</text></svg>"))
        .hasMessageContaining("entities");
    assertThatThrownBy(() -> read(SVG + "<path d='&nope;'/></svg>"))
        .hasMessageStartingWith("o.svg cannot be read as XML in line 1, column ");
    assertThatThrownBy(() -> read(SVG + "<e:a xmlns:e='urn:e'>&nope;</e:a></svg>"))
        .hasMessageContaining("entities");
    // The five of XML itself and numbered characters are plain text.
    Drawing named = read(SVG + "<rect id='a&amp;&#x62;' width='1' height='1'/></svg>");
    assertThat(shapes(named, List.of("a&b"))).hasSize(1);
  }

  @Test
  void aTypeThatIsOnlyNamedIsPassedOverAndNotFetched() throws IOException {
    try (ServerSocket server = new ServerSocket(0)) {
      server.setSoTimeout(300);
      String type =
          "<?xml version='1.0'?><!DOCTYPE svg PUBLIC '-//W3C//DTD SVG 1.1//EN'"
              + " 'http://127.0.0.1:"
              + server.getLocalPort()
              + "/svg11.dtd'>";
      assertThat(shapes(read(type + SVG + DOOR + "</svg>"))).isEqualTo(1);
      assertThatThrownBy(server::accept).isInstanceOf(java.net.SocketTimeoutException.class);
    }
  }

  @Test
  void deepAndWideDrawingsEndAtTheirLimits() {
    String open = "<g>".repeat(SvgLimits.DEPTH - 2);
    String close = "</g>".repeat(SvgLimits.DEPTH - 2);
    assertThat(shapes(read(SVG + open + DOOR + close + "</svg>"))).isEqualTo(1);
    assertThatThrownBy(() -> read(SVG + "<g>" + open + DOOR + close + "</g></svg>"))
        .hasMessageContaining("elements more than 64 deep");
    assertThatThrownBy(() -> read(SVG + "<g>".repeat(1_000_000)))
        .hasMessageContaining("elements more than 64 deep");
    assertThatThrownBy(() -> read(SVG + "<a xmlns='urn:a'>".repeat(1_000)))
        .hasMessageContaining("elements more than 64 deep");
    assertThatThrownBy(() -> read(SVG + "<g/>".repeat(SvgLimits.ELEMENTS) + "</svg>"))
        .hasMessageContaining("more than 100,000 elements");
    StringBuilder attributes = new StringBuilder("<g");
    for (int i = 0; i <= SvgLimits.ATTRIBUTES; i++) {
      attributes.append(" a").append(i).append("=''");
    }
    // The parser of newer platforms has a limit of its own, and complains first.
    assertThatThrownBy(() -> read(SVG + attributes + "/></svg>"))
        .isInstanceOf(DrawingException.class);
    assertThatThrownBy(() -> read(SVG + "<path d='" + " ".repeat(SvgLimits.TEXT + 1) + "'/></svg>"))
        .hasMessageContaining("`d` of more than 4 million characters");
    assertThatThrownBy(() -> read(new byte[SvgLimits.FILE_BYTES + 1]))
        .hasMessageContaining("larger than 64 MB");
  }

  @Test
  void hugePathsEndAtTheirLimits() {
    Drawing one = read(SVG + "<path d='M0 0" + "l1 1".repeat(100_000) + "'/></svg>");
    assertThatThrownBy(() -> shapes(one)).hasMessageContaining("at most 100,000 segments");
    String many = ("<path d='M0 0" + "l1 1".repeat(99_000) + "'/>").repeat(5);
    Drawing five = read(SVG + many + "</svg>");
    assertThatThrownBy(() -> shapes(five)).hasMessageContaining("400,000 lines and curves");
    Drawing far = read(SVG + "<rect id='door' width='1e30' height='1'/></svg>");
    assertThatThrownBy(() -> shapes(far)).hasMessageContaining("the `width` of `door`");
  }

  @Test
  void usesThatRepeatThemselvesEnd() {
    String ring = "<g id='a'><use href='#b'/></g><g id='b'><use href='#a'/></g>";
    assertThatThrownBy(() -> shapes(read(SVG + ring + "</svg>")))
        .hasMessageContaining("repeats parts of itself");
    assertThatThrownBy(() -> shapes(read(SVG + "<g id='a'><use href='#a'/></g></svg>")))
        .hasMessageContaining("repeats parts of itself");
    String symbol = "<symbol id='a'><use href='#a'/></symbol><use href='#a'/>";
    assertThatThrownBy(() -> shapes(read(SVG + symbol + "</svg>")))
        .hasMessageContaining("repeats parts of itself");
    StringBuilder bomb = new StringBuilder(SVG + "<defs><g id='u0'>" + DOOR + "</g>");
    for (int i = 1; i < 30; i++) {
      bomb.append("<g id='u").append(i).append("'>");
      bomb.append(("<use href='#u" + (i - 1) + "'/>").repeat(10)).append("</g>");
    }
    bomb.append("</defs><use href='#u29'/></svg>");
    assertThatThrownBy(() -> shapes(read(bomb.toString())))
        .hasMessageContaining("repeats parts of itself");
  }

  /** Few bytes, each element small in itself, and a day's work for whoever reads each use anew. */
  @Test
  void usesOfElementsWithMuchTextEnd() {
    String style = "x:y;".repeat(250_000);
    String uses = "<use href='#a'/>".repeat(50_000);
    String colonless = "<rect width='1' height='1' style='" + ";".repeat(3_000_000) + ":'/>";
    assertThat(shapes(read(SVG + colonless + "</svg>"))).isEqualTo(1);
    for (String part :
        List.of(
            "<rect id='a' width='1' height='1' style='" + style + "'/>",
            "<rect id='a' width='1' height='1' transform='translate(1"
                + " ".repeat(500_000)
                + ")'/>",
            "<path id='a' d='" + " ".repeat(1_000_000) + "'/>")) {
      assertThatThrownBy(() -> shapes(read(SVG + "<defs>" + part + "</defs>" + uses + "</svg>")))
          .hasMessageContaining("more than 64 million letters");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "viewBox='0 0 1e999 10'",
        "viewBox='0 0 1e300 1e300'",
        "viewBox='-1e999 0 10 10'",
        "viewBox='0 0 NaN 10'",
        "width='1e999' height='5'",
      })
  void aSizeThatIsNoSizeIsSaidSo(String root) {
    assertThatThrownBy(
            () ->
                shapes(
                    read(
                        "<svg xmlns='http://www.w3.org/2000/svg' " + root + ">" + DOOR + "</svg>")))
        .isInstanceOf(DrawingException.class)
        .hasMessageContaining("cannot be read");
  }

  @Test
  void encodingsAreThoseThatTheFileDeclares() {
    String text = SVG + "<rect id='Tür' width='1' height='1'/></svg>";
    String declared = "<?xml version='1.0' encoding='%s'?>";
    for (Charset charset :
        List.of(StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE, StandardCharsets.UTF_8)) {
      byte[] marked = ("\uFEFF" + text).getBytes(charset);
      assertThat(shapes(read(marked), List.of("Tür"))).hasSize(1);
    }
    byte[] latin = (declared.formatted("ISO-8859-1") + text).getBytes(StandardCharsets.ISO_8859_1);
    assertThat(shapes(read(latin), List.of("Tür"))).hasSize(1);
    // Latin letters without that declaration are no UTF-8.
    assertThatThrownBy(() -> read(text.getBytes(StandardCharsets.ISO_8859_1)))
        .isInstanceOf(DrawingException.class);
    assertThatThrownBy(() -> read(declared.formatted("nonsense") + text))
        .isInstanceOf(DrawingException.class);
  }

  @Test
  void nameSpacesTellWhatIsPartOfTheDrawing() {
    assertThat(shapes(read("<svg>" + DOOR + "</svg>"))).isEqualTo(1);
    String prefixed =
        "<s:svg xmlns:s='http://www.w3.org/2000/svg'><s:g><s:rect width='1' height='1'/></s:g>"
            + DOOR
            + "</s:svg>";
    assertThat(shapes(read(prefixed))).isEqualTo(1);
    assertThatThrownBy(() -> read("<svg xmlns='urn:other'>" + DOOR + "</svg>"))
        .hasMessage(
            "o.svg is no SVG drawing: its outermost element is `svg` of another name space.");
    assertThatThrownBy(() -> read("<html><body/></html>"))
        .hasMessage("o.svg is no SVG drawing: its outermost element is `html`.");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "  ",
        "plain text",
        "<svg",
        "<svg>",
        "<svg><g></svg>",
        "<svg/>x",
        "<svg/><svg/>",
        "<svg a='1' a='2'/>",
        "<svg b=c/>",
        "\u0000",
        "<?xml version='9.9'?><svg/>",
        "PK\u0003\u0004",
        "<a:svg/>",
        "<!-- -- --><svg/>",
        "]]>",
        "<svg>\u0001</svg>"
      })
  void whatIsNoXmlIsSaidInOneSentence(String text) {
    assertThatThrownBy(() -> read(text))
        .isInstanceOf(DrawingException.class)
        .hasMessageStartingWith("o.svg ")
        .hasMessageNotContaining("\n")
        .hasMessageNotContaining("Exception");
  }

  @Test
  void namesInSentencesAreShortAndOnOneLine() {
    String id = "x&#10;".repeat(200);
    assertThatThrownBy(
            () -> shapes(read(SVG + "<line id='" + id + "'/></svg>"), List.of("x\n".repeat(200))))
        .satisfies(e -> assertThat(e.getMessage()).hasSizeLessThan(160).doesNotContain("\n"));
  }

  /** A sound drawing with bytes changed, left out and repeated: it reads or is refused. */
  @Test
  void damagedFilesNeverDoAnythingElse() {
    String sound =
        "<?xml version='1.0'?><svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9'><defs><g"
            + " id='a' transform='rotate(3) scale(2,1)'><path d='M0 0c1 2 3 4 5 6a1 2 3 0 1 4 4z'/>"
            + "</g></defs><use href='#a' x='1%'/><rect id='b' rx='2' width='3mm' height='4'"
            + " style='display:inline'/><polygon points='1,2 3,4 5,1'/></svg>";
    byte[] bytes = sound.getBytes(StandardCharsets.UTF_8);
    Random random = new Random(17);
    int read = 0;
    for (int i = 0; i < 4_000; i++) {
      byte[] damaged = bytes.clone();
      for (int n = 1 + random.nextInt(4); n > 0; n--) {
        int at = random.nextInt(damaged.length);
        damaged[at] =
            random.nextBoolean() ? (byte) random.nextInt(256) : bytes[random.nextInt(bytes.length)];
      }
      try {
        shapes(Drawing.read("o.svg", damaged), List.of());
        read++;
      } catch (DuskplyException e) {
        assertThat(e.getMessage()).startsWith(e.getMessage().contains("o.svg") ? "" : "o.svg");
      }
    }
    assertThat(read).isBetween(100, 3_900);
  }
}
