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
        .isEqualTo("does 2 steps together, where the mask top shows (25.0 % of the picture).");
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
        .contains("where its own mask shows (less than 0.1 % of the picture)");
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
        .isEqualTo("lightens with the frame pop (1.tif), where the mask top shows.");
    assertThat(explanation.frames().stream().map(FrameLine::name)).containsExactly("dusk");
    assertThat(byName(explain("steps: [ { pop: pop } ]", View.WHOLE.skipping("pop"))))
        .hasEntrySatisfying("pop", s -> assertThat(s.done()).isFalse());
  }

  @Test
  void sentencesReadAsSentences() {
    assertThat(
            only("{ pop: pop, treat: [ { exposure: 0.3 } ], mask: top, opacity: 0.85 }").sentence())
        .isEqualTo(
            "lightens with the frame pop (1.tif), treated with exposure 0.3 stops, where the mask"
                + " top shows (25.0 % of the picture), at opacity 0.85.");
    assertThat(only("{ lay: pop, treat: [ { saturation: 1.1 } ], blend: screen }").sentence())
        .isEqualTo(
            "lays the frame pop (1.tif), treated with saturation 1.1, over it by screen,"
                + " everywhere.");
    assertThat(only("{ lay: pop }").sentence())
        .isEqualTo("lays the frame pop (1.tif) over it, everywhere.");
    assertThat(
            only("{ adjust: [ { contrast: { strength: 0.1, pivot: 0.2 } }, { power: 1.1 } ] }")
                .sentence())
        .isEqualTo("adjusts what is there by contrast 0.1, pivot 0.2, then power 1.1, everywhere.");
  }

  @Test
  void sentencesOfLightReadAsSentences() {
    assertThat(only("{ pop: pop, compare: luminance, mask: top }").sentence())
        .isEqualTo(
            "lightens with the frame pop (1.tif), compared by luminance, where the mask top shows"
                + " (25.0 % of the picture).");
    assertThat(only("{ lay: pop, blend: soft-light, blend-in: encoded }").sentence())
        .isEqualTo(
            "lays the frame pop (1.tif) over it by soft-light of encoded values, everywhere.");
    assertThat(only("{ dodge: { stops: 0.4, gel: 120 }, mask: top }").sentence())
        .isEqualTo(
            "brightens what is there by 0.4 stops, through a gel of 120 mired, where the mask top"
                + " shows (25.0 % of the picture).");
    assertThat(
            only("{ burn: { stops: 1, gel: { from: 3000, to: 3600, plus-green: 5 } } }").sentence())
        .isEqualTo(
            "darkens what is there by 1 stop, through a gel that turns 3000 K into 3600 K and"
                + " plus-green 5, everywhere.");
    assertThat(only("{ vignette: -0.6 }").sentence())
        .isEqualTo(
            "darkens what is there away from the middle, by 0.6 stops in full (from 0.4 to 1 of the"
                + " way to a corner), everywhere.");
    assertThat(only("{ vignette: { stops: 1, centre: [12, 8.5] } }").sentence())
        .startsWith("brightens what is there away from the point 12, 8.5, by 1 stop in full (");
    assertThat(
            explain(
                    "steps: [ { id: g, group: [ { pop: pop }, { lay: cut } ], treat: [ { contrast: 0.15 } ] } ]")
                .steps()
                .get(0)
                .sentence())
        .isEqualTo(
            "does 2 steps together, the light that they add treated with contrast 0.15,"
                + " everywhere.");
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
    assertThat(sentence).startsWith("adjusts what is there by ").endsWith(", everywhere.");
    return sentence.substring(25, sentence.length() - 13);
  }

  private String equation(String adjustment) {
    String formula = formula("{ adjust: [ { " + adjustment + " } ] }");
    assertThat(formula).startsWith("out = A(b); A: ");
    return formula.substring(15);
  }

  @Test
  void everyAdjustmentIsSaidAsItIsWritten() {
    assertThat(adjusted("ends: { black: 0.02, white: 0.97 }"))
        .isEqualTo("ends black 0.02, white 0.97");
    assertThat(adjusted("gel: -42")).isEqualTo("gel -42 mired");
    assertThat(adjusted("gel: { from: 3000, to: 3600, plus-green: 5 }"))
        .isEqualTo("gel from 3000 to 3600 kelvin, plus-green 5");
    assertThat(adjusted("hue: { centre: 260, width: 70, soft: 20, turn: -6, chroma: 1.15 }"))
        .isEqualTo(
            "hue turn -6 degrees, chroma 1.15, centre 260 degrees, width 70 degrees, soft 20"
                + " degrees");
    assertThat(
            adjusted("cdl: { slope: [1.05, 1, 0.95], offset: 0.01, saturation: 0.9, clamp: true }"))
        .isEqualTo("cdl slope red 1.05 green 1 blue 0.95, offset 0.01, saturation 0.9, clamp");
    assertThat(adjusted("shoulder: { begins: 0.6, white-at: 6 }"))
        .isEqualTo("shoulder begins 0.6, white-at 6");
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
            "40 × 32 pixels, 16 bits, srgb, read 0.5 stops darker. Without a profile it is read as"
                + " sRGB.");
    assertThat(frames.get("cut").description()).contains("16 bits with transparency");
    FrameLine base = frames.get("dusk");
    FrameLine pop = frames.get("pop");
    assertThat(base.unitsRead()).isEqualTo(base.units());
    assertThat(pop.file()).isEqualTo("1.tif");
    assertThat(pop.unitsRead()).isBetween(1, pop.units() - 1);
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
