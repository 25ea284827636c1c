package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.duskply.engine.Explanation.FrameLine;
import org.duskply.engine.Explanation.StepLine;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.step.Blend;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a recipe is said to do agrees with what it does. */
class ExplainerTest {
  private static final int WIDTH = 40;
  private static final int HEIGHT = 32;

  @TempDir Path folder;
  private Desk desk;

  @BeforeEach
  void frames() {
    desk = new Desk(folder, WIDTH, HEIGHT);
    desk.frame("0.tif", 0);
    desk.frame("1.tif", 1);
    TiffFile covered =
        new TiffFile(WIDTH, HEIGHT, 4, 16, (x, y, c) -> c == 3 ? 900 * x : 500 * y)
            .shorts(338, 2) // TIFF 6.0, ExtraSamples: unassociated alpha
            .strips(8);
    desk.write("2.tif", covered.bytes());
  }

  private Explanation explain(String steps) {
    return explain(steps, View.WHOLE);
  }

  private Explanation explain(String steps, View view) {
    Path recipe =
        desk.recipe(
            """
            duskply: 1
            base: dusk
            frames:
              dusk: 0.tif
              pop: { file: 1.tif, exposure: -0.5 }
              cut: 2.tif
            masks:
              top: { polygon: "0,0 40,0 40,8 0,8" }
              third: { polygon: "0,0 40,0 40,8 0,8", strength: 0.3 }
            """
                + steps);
    try (Engine engine = Engine.builder().threads(1).memory(64 << 20).build();
        Composite composite = engine.open(recipe, view)) {
      return composite.explain();
    }
  }

  private static Map<String, StepLine> byName(Explanation explanation) {
    return explanation.steps().stream()
        .collect(Collectors.toMap(StepLine::name, Function.identity()));
  }

  private StepLine only(String step) {
    List<StepLine> lines = explain("steps: [ " + step + " ]\n").steps();
    assertThat(lines).hasSize(1);
    return lines.get(0);
  }

  private String formula(String step) {
    return only(step).formula();
  }

  @Test
  void groupsComeBeforeTheirMembers() {
    Explanation explanation =
        explain(
            """
            steps:
              - { id: first, pop: pop }
              - { id: both, group: [ { adjust: [ { exposure: 1 } ] }, { lay: cut } ], mask: top }
            """);
    assertThat(explanation.steps().stream().map(s -> s.depth() + " " + s.name()))
        .containsExactly("0 first", "0 both", "1 both/#1", "1 cut");
    StepLine both = byName(explanation).get("both");
    assertThat(both.sentence())
        .isEqualTo(
            "The steps both/#1 and cut are done in this order and mixed in as one, inside the mask top"
                + " (a polygon of 4 corners; 25.0 % of the picture).");
    assertThat(both.formula()).isEqualTo("out = b + m·(steps(b) − b)");
  }

  @Test
  void areasAreThoseOfTheMasks() {
    assertThat(only("{ pop: pop }").maskArea()).isEqualTo(1);
    assertThat(only("{ pop: pop, mask: top }").maskArea()).isEqualTo(0.25);
    // 0.3 as a float is off by 1.2e-8
    assertThat(only("{ pop: pop, mask: third }").maskArea()).isCloseTo(0.075, within(1e-8));
    assertThat(only("{ pop: pop, mask: { except: [top] } }").maskArea()).isEqualTo(0.75);
    assertThat(only("{ pop: pop, mask: { polygon: \"0,0 0.5,0 0.5,0.5 0,0.5\" } }").sentence())
        .contains("inside a polygon of 4 corners (less than 0.1 % of the picture)");
  }

  @Test
  void whatIsLeftOutIsSaidToBe() {
    Explanation explanation =
        explain(
            """
            steps:
              - { id: a, pop: pop, mask: top, skip: true }
              - { id: b, lay: cut, opacity: 0 }
              - { id: c, skip: true, group: [ { id: d, adjust: [ { power: 1.1 } ] } ] }
              - { id: e, adjust: [ { power: 1.1 } ] }
            """);
    assertThat(explanation.steps().stream().map(s -> s.name() + " " + s.done()))
        .containsExactly("a false", "b false", "c false", "d false", "e true");
    assertThat(byName(explanation).get("a").sentence())
        .isEqualTo(
            "The frame pop (1.tif) lightens the picture channel by channel, inside the mask top (a"
                + " polygon of 4 corners).");
    assertThat(explanation.frames().stream().map(FrameLine::name)).containsExactly("dusk");
    assertThat(byName(explain("steps: [ { pop: pop } ]", View.WHOLE.skipping("pop"))))
        .hasEntrySatisfying("pop", s -> assertThat(s.done()).isFalse());
  }

  @Test
  void sentencesReadAsSentences() {
    assertThat(
            only("{ pop: pop, treat: [ { exposure: 0.3 } ], mask: top, opacity: 0.85 }").sentence())
        .isEqualTo(
            "The frame pop (1.tif) lightens the picture channel by channel at 85 %, inside the mask"
                + " top (a polygon of 4 corners; 25.0 % of the picture). Before that, the frame is"
                + " made brighter by 0.3 stops.");
    assertThat(only("{ lay: pop, treat: [ { saturation: 1.1 } ], blend: screen }").sentence())
        .isEqualTo(
            "The frame pop (1.tif) is laid over the picture by screen, which multiplies what each"
                + " lacks to white, everywhere. Before that, the frame's colours are strengthened by"
                + " 10 %.");
    assertThat(only("{ lay: pop }").sentence())
        .isEqualTo("The frame pop (1.tif) is laid over the picture everywhere.");
    assertThat(only("{ lay: pop, blend: screen, opacity: 0.123456 }").sentence())
        .endsWith("lacks to white, at 12.3456 % everywhere.");
    assertThat(only("{ vignette: -0.6, opacity: 0.5 }").sentence())
        .startsWith("The picture is made darker away from its middle at 50 %: not at all up to");
  }

  /** A hundred steps through one mask of a hundred strokes say each stroke once. */
  @Test
  void aLongMaskIsToldOnce() {
    StringBuilder text = new StringBuilder("  long: { strokes: [");
    for (int i = 0; i < 100; i++) {
      text.append("{ points: \"").append(i).append(",1\", radius: 2 }, ");
    }
    text.append("] }\nsteps:\n");
    for (int i = 0; i < 100; i++) {
      text.append("  - { lay: pop, mask: long }\n");
    }
    Explanation explanation = explain(text.toString());
    assertThat(explanation.steps())
        .hasSize(100)
        .allMatch(step -> step.sentence().length() < 200)
        .allMatch(step -> step.sentence().contains("inside the mask long ("));
    assertThat(explanation.masks())
        .singleElement()
        .matches(mask -> mask.name().equals("long"))
        .matches(
            mask -> mask.sentence().startsWith("This is 100 brush strokes: one through 1 point"));
  }

  @Test
  void titlesAreCarriedAlong() {
    assertThat(only("{ pop: pop, title: Hull }").title()).isEqualTo("Hull");
    assertThat(only("{ pop: pop }").title()).isNull();
  }

  @Test
  void theWordFollowsTheNumber() {
    assertThat(adjusted("exposure: -1")).isEqualTo("it is made darker by 1 stop");
    assertThat(adjusted("exposure: 0")).isEqualTo("it keeps its exposure");
    assertThat(adjusted("contrast: -0.1")).startsWith("its contrast is lowered by 10 % about");
    assertThat(adjusted("contrast: 0")).isEqualTo("its contrast is left as it is");
    assertThat(adjusted("saturation: 0.925")).isEqualTo("its colours are weakened by 7.5 %");
    assertThat(adjusted("saturation: 1")).isEqualTo("its colours are left as they are");
    assertThat(adjusted("hue: { turn: 0 }")).isEqualTo("its colours are left as they are");
    assertThat(adjusted("hue: { chroma: 0 }"))
        .isEqualTo("its colours are taken away, which leaves grey");
    assertThat(adjusted("power: 1"))
        .isEqualTo("its encoded values are raised to the power of 1, which changes nothing");
    assertThat(adjusted("ends: { white: 1 }"))
        .isEqualTo("its encoded values are spread evenly so that 0 stays black and 1 stays white");
    assertThat(adjusted("gel: 0")).isEqualTo("its light is left as it is");
    assertThat(adjusted("gel: { mired: 20, plus-green: -2.5 }"))
        .isEqualTo(
            "its light is warmed by 20 mired and made more magenta by 2.5 thousandths of CIE 1960"
                + " uv");
    assertThat(adjusted("cdl: { slope: 1 }"))
        .isEqualTo("its encoded red, green and blue are left as they are (ASC CDL)");
    assertThat(adjusted("cdl: { saturation: 1.25, offset: -0.1 }"))
        .isEqualTo(
            "its encoded red, green and blue are shifted down by 0.1 and drawn away from their luma"
                + " (0.2126, 0.7152 and 0.0722 of them) by 25 % (ASC CDL)");
  }

  @Test
  void equationsOfLightSayWhatIsComputed() {
    assertThat(formula("{ dodge: 0.4, mask: top }")).isEqualTo("out = b + m·(b·2^0.4 − b)");
    assertThat(formula("{ burn: { stops: 0.3, gel: -40 } }"))
        .isEqualTo("out = W(b·2^(−0.3)); W: Bradford(4545 K → 5556 K)·(R, G, B)");
    assertThat(formula("{ vignette: -0.6 }"))
        .isEqualTo(
            "out = b·2^(−0.6·s); s: 0 up to 0.4 of half the diagonal from the centre, 1 from 1 on,"
                + " 3u² − 2u³ between");
    assertThat(formula("{ pop: pop, compare: luminance }"))
        .isEqualTo(
            "out = brighter(b, f); brighter: the one of greater luminance, and between them where"
                + " they are within 0.1 stops of each other");
    assertThat(formula("{ lay: pop, blend: multiply, blend-in: encoded }"))
        .isEqualTo("out = L(E(b)·E(f)); E: the way to encoded values, L: the way back");
    assertThat(formula("{ lay: pop, blend: darken, blend-in: encoded }"))
        .isEqualTo("out = min(b, f)");
    assertThat(formula("{ lay: pop, blend: difference, opacity: 0.5 }"))
        .isEqualTo("out = b + 0.5·(|b − f| − b)");
    assertThat(formula("{ lay: pop, blend: color-burn }"))
        .isEqualTo(
            "out = color-burn(b, f); color-burn(b, f): 1 − (1 − b)/f, at least 0; where b is 1 and"
                + " above, it stays");
    for (Blend mode : Blend.values()) {
      assertThat(formula("{ lay: pop, blend: " + mode.key() + " }")).startsWith("out = ");
    }
    assertThat(
            explain("steps: [ { id: g, group: [ { pop: pop } ], treat: [ { exposure: 1 } ] } ]")
                .steps()
                .get(0)
                .formula())
        .isEqualTo("out = (b + T(max(0, steps(b) − b)) − max(0, b − steps(b))); T: x·2^1");
  }

  @Test
  void equationsSayWhatIsComputed() {
    assertThat(formula("{ pop: pop }")).isEqualTo("out = max(b, f)");
    assertThat(formula("{ pop: pop, mask: top, opacity: 0.85 }"))
        .isEqualTo("out = b + m·0.85·(max(b, f) − b)");
    assertThat(formula("{ lay: pop, opacity: 0.5 }")).isEqualTo("out = b + 0.5·(f − b)");
    assertThat(formula("{ lay: cut, mask: top }")).isEqualTo("out = b + m·c·(f − b)");
    assertThat(formula("{ lay: cut }")).isEqualTo("out = b + c·(f − b)");
    assertThat(formula("{ lay: pop, blend: multiply }")).isEqualTo("out = b·f");
    assertThat(formula("{ lay: pop, blend: darken }")).isEqualTo("out = min(b, f)");
    assertThat(formula("{ lay: pop, blend: plus-lighter }")).isEqualTo("out = (b + f)");
    assertThat(formula("{ lay: pop, blend: screen }"))
        .startsWith("out = screen(b, f); screen(b, f): b + f − b·f up to white");
    assertThat(formula("{ pop: pop, treat: [ { exposure: -0.3 }, { saturation: 1.08 } ] }"))
        .isEqualTo("out = max(b, T(f)); T: x·2^(−0.3), then Oklab a, b → 1.08·(a, b)");
    assertThat(
            formula(
                "{ adjust: [ { contrast: { strength: 0.06, channel: rgb } }, { power: 1.05 } ] }"))
        .isEqualTo("out = A(b); A: 0.18·(x/0.18)^1.06, then L(E(x)^1.05)");
    assertThat(formula("{ adjust: [ { curve: { points: [[0, 0], [1, 2]], axis: linear } } ] }"))
        .isEqualTo("out = A(b); A: curve(x)");
    assertThat(formula("{ adjust: [ { curve: { points: [[0, 0], [1, 0.9]], channel: red } } ] }"))
        .isEqualTo("out = A(b); A: red → L(curve(E(red)))");
  }

  private String adjusted(String adjustment) {
    String sentence = only("{ adjust: [ { " + adjustment + " } ] }").sentence();
    String before = "The picture is adjusted everywhere: ";
    assertThat(sentence).startsWith(before).endsWith(".");
    return sentence.substring(before.length(), sentence.length() - 1);
  }

  private String equation(String adjustment) {
    String formula = formula("{ adjust: [ { " + adjustment + " } ] }");
    assertThat(formula).startsWith("out = A(b); A: ");
    return formula.substring(15);
  }

  @Test
  void everyAdjustmentHasItsEquation() {
    assertThat(equation("ends: { black: 0.02, white: 0.97 }"))
        .isEqualTo("L(max(0, (E(x) − 0.02)/(0.97 − 0.02)))");
    assertThat(equation("ends: { white: 0.9 }")).isEqualTo("L(max(0, E(x)/0.9))");
    assertThat(equation("gel: 42")).isEqualTo("Bradford(5587 K → 4525 K)·(R, G, B)");
    assertThat(equation("gel: { plus-green: -5 }"))
        .isEqualTo("Bradford(5000 K → 5000 K and 5 magenta)·(R, G, B)");
    assertThat(equation("hue: { turn: -6, chroma: 1.15, lightness: 0.02 }"))
        .isEqualTo("Oklab h → h − 6°, C → C·1.15, L → L + 0.02");
    assertThat(equation("hue: { centre: 260, width: 70, turn: -6, chroma: 0.85 }"))
        .isEqualTo("Oklab h → h − 6°·w, C → C·(1 − 0.15·w); w: hues about 260°, 70° wide, 0° soft");
    assertThat(equation("cdl: { slope: 1.1, power: 0.9 }")).isEqualTo("L((E(x)·1.1)^0.9)");
    assertThat(equation("cdl: { offset: [0.1, 0, -0.1], axis: linear, clamp: true }"))
        .isEqualTo(
            "red → (red·1 + 0.1)^1, green → (green·1)^1, blue → (blue·1 − 0.1)^1, held to 0…1 at"
                + " each step");
    assertThat(equation("cdl: { slope: 1.1, saturation: 0.9 }"))
        .isEqualTo(
            "v = (E(x)·1.1)^1, x → L(luma + 0.9·(v − luma)), luma = 0.2126·v_red + 0.7152·v_green"
                + " + 0.0722·v_blue");
    assertThat(equation("shoulder: { begins: 0.6, white-at: 6 }"))
        .isEqualTo(
            "above 0.6: 0.6 + (1 − 0.6)·u·(1 + u/w²)/(1 + u), u = (x − 0.6)/(1 − 0.6), w = u at 6;"
                + " 1 from there on");
  }

  @Test
  void framesAreDescribedAndOnlyWhatMasksShowIsCounted() {
    Explanation explanation =
        explain("steps: [ { pop: pop, mask: top }, { lay: cut, mask: top } ]\n");
    Map<String, FrameLine> frames =
        explanation.frames().stream()
            .collect(Collectors.toMap(FrameLine::name, Function.identity()));
    assertThat(frames.get("pop").description())
        .isEqualTo(
            "The file 1.tif holds 40 × 32 pixels of 16 bits. Without a profile it is read as sRGB. It"
                + " is read 0.5 stops darker.");
    assertThat(frames.get("cut").description()).contains("16 bits, with transparency that is used");
    FrameLine base = frames.get("dusk");
    FrameLine pop = frames.get("pop");
    assertThat(base.unitsRead().cardinality()).isEqualTo(base.units());
    assertThat(pop.file()).isEqualTo("1.tif");
    assertThat(pop.unitsRead().cardinality()).isBetween(1, pop.units() - 1);
    assertThat(explanation.allowedBytes()).isEqualTo(64 << 20);
    assertThat(explanation.floorBytes()).isBetween(10_000L, 64L << 20);
    assertThat(explanation.coreSeconds()).isBetween(1e-4, 60.0);
  }

  @Test
  void theFloorIsTheOneThatRenderingGoesBy() {
    Explanation explanation =
        explain(
            "steps: [ { pop: pop } ]\ndeliverables: { a: a.tif, b: { file: b.jpg, long-edge: 20 } }\n");
    assertThat(deliver(explanation.floorBytes())).isTrue();
    assertThat(deliver(explanation.floorBytes() - 1)).isFalse();
  }

  private boolean deliver(long memory) {
    try (Engine engine = Engine.builder().threads(1).memory(memory).build();
        Composite composite = engine.open(folder.resolve("recipe.yaml"))) {
      composite.deliver(folder.resolve("out"), java.util.Set.of(), Progress.SILENT);
      return true;
    } catch (MemoryException e) {
      return false;
    }
  }
}
