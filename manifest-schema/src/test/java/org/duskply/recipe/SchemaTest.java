package org.duskply.recipe;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The schema, asked by a validator of other hands, agrees with the reader. */
class SchemaTest {
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(RecipeSchema.text());

  /** What only the reader sees: names, rings, rules between values, the language of YAML. */
  private static final List<String> READER_ALONE =
      List.of(
          "there is no frame called",
          "there is no mask called",
          "these masks use each other",
          "the mask `a` uses itself",
          "the path ",
          "there is no placeholder",
          "is no date",
          "write the same file",
          "a JPEG ",
          "but this file is a",
          "the x of a curve's points",
          "a curve may not turn back",
          "begins and ends at the same",
          "`id` and `ids`",
          "`widen` moves an outline",
          "says no brightness",
          "so no brightness lies between",
          " asks where `",
          "a gel is given either by",
          "a gel with `",
          "this gel says nothing",
          "must be at least 0.05 above `black`",
          "`centre` needs `width`",
          "belongs to a range of hues",
          "are called `",
          "stands here a second time",
          "a second document",
          "anchors (",
          "aliases (",
          "merge keys",
          "type tags",
          "there is a tab here",
          "lines that begin with %",
          "quotes",
          "is `017`",
          "is `1.`",
          "is `0x10`",
          "is `.5`",
          "`x-mood` has no value",
          "half of a character",
          "there is no step called",
          "there is no alternate called",
          "matched to",
          "a gel is given",
          "the crop reaches",
          "cannot be a step's id",
          "stands in this list twice",
          "would write one file",
          "both say how large",
          "must stand on one line",
          "control character",
          "under `skip` and under",
          "; keep one",
          "a change cannot make it");

  static Stream<MistakeCases.Case> readable() {
    return MistakeCases.all().stream().filter(SchemaTest::canBeAsked);
  }

  /** Cases that are YAML or JSON at all, and whose mistakes a schema can see. */
  private static boolean canBeAsked(MistakeCases.Case mistake) {
    boolean text = mistake.expected().stream().anyMatch(SchemaTest::unreadable);
    boolean hidden =
        mistake.expected().stream()
            .filter(line -> !line.contains(" notice: "))
            .allMatch(line -> READER_ALONE.stream().anyMatch(line::contains));
    boolean sound = mistake.expected().stream().allMatch(line -> line.contains(" notice: "));
    // The validator's YAML takes +0.3 for a text, against YAML 1.2's core schema.
    boolean plus = mistake.text().contains("+0.3");
    return !text && !plus && (sound || !hidden);
  }

  private static boolean unreadable(String line) {
    return Stream.of(
            "needs quotes",
            "indent",
            "cannot begin with",
            "is never closed",
            "something follows",
            "is missing before this",
            "begins on a line of its own",
            "space is missing",
            "one plain word",
            "is no text",
            "holds no recipe",
            "cannot be read",
            "JSON",
            "ends too early",
            "comma before",
            "a second document")
        .anyMatch(line::contains);
  }

  @Test
  void thereAreFortyCasesAndHalfOfThemAreWrong() {
    long wrong =
        readable().filter(c -> c.expected().stream().anyMatch(l -> !l.contains("notice:"))).count();
    assertThat(wrong).isGreaterThan(35);
    assertThat(sound()).hasSizeGreaterThan(20);
  }

  @ParameterizedTest
  @MethodSource("readable")
  void agreesWithTheReader(MistakeCases.Case mistake) {
    boolean reads = RecipeReader.strict().check("test", mistake.text()).recipe() != null;
    assertThat(errors(mistake.text()).isEmpty())
        .as("schema says %s", errors(mistake.text()))
        .isEqualTo(reads);
  }

  static List<String> sound() {
    return List.of(
        "",
        "title: x\nnotes: |\n  a\n  b\nx-own: [1, { a: ~ }]\nneeds: 1",
        "grid: [600, 400]\nworking: prophoto-rgb",
        "steps: []\nmasks: {}\ndeliverables: {}",
        "steps: [{ pop: dusk }]",
        "steps: [{ pop: dusk, treat: [{ exposure: 1 }], id: a, title: t, notes: n, x-a: 1 }]",
        "steps: [{ lay: dusk, blend: plus-lighter, opacity: 0, skip: true }]",
        "steps: [{ adjust: [{ exposure: { stops: -20 } }, { power: 20 }] }]",
        "steps: [{ adjust: [{ contrast: 0.1 }, { contrast: { strength: 4, pivot: 1 } }] }]",
        "steps: [{ adjust: [{ contrast: { strength: -0.9, channel: rgb } }] }]",
        "steps: [{ adjust: [{ saturation: { factor: 0 } }, { saturation: 4 }] }]",
        "steps: [{ adjust: [{ curve: { points: [[0, 0], [1, 1]], channel: red } }] }]",
        "steps: [{ adjust: [{ curve: { points: [[0, 0], [1, 1]], axis: linear } }] }]",
        "steps: [{ group: [{ pop: dusk }, { group: [{ lay: dusk }] }] }]",
        "steps: [{ group: [{ pop: dusk }], treat: [{ contrast: 0.1 }, { exposure: 0.2 }] }]",
        "steps: [{ lay: dusk, blend: color-dodge, blend-in: encoded, treat: [{ power: 1.1 }] }]",
        "steps: [{ pop: dusk, compare: luminance, treat: [] }]",
        "steps: [{ dodge: 0.4 }, { dodge: { stops: 0, gel: 120 } }, { dodge: { stops: 20 } }]",
        "steps: [{ burn: { stops: 0.3, gel: { from: 3000, to: 3600 } }, opacity: 0.5 }]",
        "steps: [{ vignette: -0.6 }, { vignette: { stops: 1, begins: 0, full: 0 } }]",
        "steps: [{ vignette: { stops: -0.6, centre: [3000, -10.5], full: 10 } }]",
        "masks: { a: {}, b: { any-of: [a, { feather: 1 }] } }",
        "masks: { a: { polygon: \"0,0 1,0 1,1\" } }",
        "masks: { a: { polygon: \" 0,0\\n-1e2,+0.5   1.25,1 \", rule: evenodd } }",
        "masks: { a: { polygon: [[0, 0], [1, 0], [1, 1]], feather: 2000, inverted: true } }",
        "masks: { a: { path: \"M0 0H1V1Z\", rule: nonzero, strength: 0.5, x-a: b } }",
        "masks: { a: {}, b: { within: [a], except: [a, { except: [a] }] } }",
        "steps: [{ pop: dusk, mask: { except: [] } }]",
        "masks: { a: { ellipse: { centre: [1, 2], radii: [3, 4], turn: -12 }, widen: -2 } }",
        "masks: { a: { gradient: { from: [0, 9], to: [0, 13], ease: smooth } } }",
        "masks: { a: { svg: a.svg, id: door }, b: { svg: a.svg, ids: [a, b], rule: evenodd } }",
        "masks: { a: { svg: a.svg }, b: { all-of: [a, { polygon: \"0,0 1,0 1,1\" }], widen: 500 } }",
        "deliverables: { a: out/a.tif, b: { file: b.PNG, depth: 16 }, c: c.jpeg }",
        "deliverables: { a: { file: a.tiff, compress: none, profile: rec2020, long-edge: 1 } }",
        "deliverables: { a: { file: a.jpg, quality: 1, depth: 8, x-for: web } }");
  }

  @ParameterizedTest
  @MethodSource("sound")
  void bothTakeWhatIsSound(String rest) {
    String text = MistakeCases.SOUND + "\n" + rest;
    assertThat(RecipeReader.strict().check("test", text).problems()).allMatch(Problem::isNotice);
    assertThat(errors(text)).isEmpty();
  }

  /** One mistake, one message: no oneOf that repeats it for each alternative. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "steps: [{ pop: dusk, blend: screen }]",
        "steps: [{ pop: dusk, lay: dusk }]",
        "steps: [{ pop: dusk, glow: 1 }]",
        "steps: [{ pop: 7 }]",
        "steps: [{ opacity: 1 }]",
        "steps: [{ pop: dusk, opacity: 2 }]",
        "steps: [{ lay: dusk, blend: hard }]",
        "steps: [{ lay: dusk, blend-in: srgb }]",
        "steps: [{ pop: dusk, compare: hue }]",
        "steps: [{ dodge: { stops: -0.3 } }]",
        "steps: [{ burn: { gel: 40 } }]",
        "steps: [{ dodge: 1, treat: [{ power: 2 }] }]",
        "steps: [{ vignette: { stops: -1, starts: 0.2 } }]",
        "steps: [{ vignette: { stops: -1, centre: [1] } }]",
        "steps: [{ group: [{ pop: dusk }], treat: [{ contrast: x }] }]",
        "steps: [{ adjust: [{ exposure: x }] }]",
        "steps: [{ adjust: [{ exposure: { stop: 1, stops: 1 } }] }]",
        "steps: [{ adjust: [{ exposure: 1, power: 1 }] }]",
        "steps: [{ adjust: [] }]",
        "steps: [{ pop: dusk, mask: { rule: evenodd } }]",
        "steps: [{ pop: dusk, mask: { polygon: \"0,0 1,1\" } }]",
        "steps: [{ pop: dusk, mask: { polygon: [[0, 0], [1, 0], [1]] } }]",
        "steps: [{ group: [{ pop: dusk, opacity: 3 }] }]",
        "masks: { a: { any-of: [{ feather: -1 }] } }",
        "deliverables: { a: { file: a.tif, depth: 12 } }",
        "deliverables: { a: a.webp }",
        "grid: [1, 2, 3]"
      })
  void oneMessageAMistake(String rest) {
    assertThat(errors(MistakeCases.SOUND + "\n" + rest)).hasSize(1);
  }

  private static List<Error> errors(String text) {
    boolean json = text.startsWith("{");
    return SCHEMA.validate(text, json ? InputFormat.JSON : InputFormat.YAML);
  }
}
