package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.PictureBits;
import org.duskply.engine.testing.Pictures;
import org.duskply.recipe.Problem;
import org.duskply.recipe.RecipeException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Drawings beside a recipe: where they may lie, and what is said of those that are wrong. */
class DrawingsTest {
  private static final String HEAD =
      """
      duskply: 1
      base: dusk
      frames: { dusk: frames/0.tif, a: frames/1.tif }
      """;
  private static final String SVG = "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 80 60'>";

  @TempDir Path folder;
  private Desk desk;

  @BeforeEach
  void desk() {
    desk = new Desk(folder, 40, 30);
    desk.frame("frames/0.tif", 0);
    desk.frame("frames/1.tif", 1);
    drawing("o.svg", "<rect id='door' x='20' y='20' width='20' height='20'/>");
  }

  private void drawing(String name, String inner) {
    desk.write(name, (SVG + inner + "</svg>").getBytes(StandardCharsets.UTF_8));
  }

  private static List<String> told(Path recipe) {
    try (Engine engine = Engine.builder().threads(1).build()) {
      RecipeException told = catchThrowableOfType(RecipeException.class, () -> engine.open(recipe));
      return told.problems().stream()
          .filter(p -> !p.isNotice())
          .map(p -> p.place().line() + ":" + p.place().column() + " " + p.sentence())
          .toList();
    }
  }

  private static Planes picture(Path recipe, View view) {
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = engine.open(recipe, view)) {
      return Pictures.planes(composite.image());
    }
  }

  @Test
  void aShapeIsTheSameAsThatPolygon() {
    Path drawn =
        desk.write(
            "drawn.yaml",
            (HEAD + "steps: [ { lay: a, mask: { svg: o.svg, id: door, feather: 3 } } ]\n")
                .getBytes(StandardCharsets.UTF_8));
    Path written =
        desk.write(
            "written.yaml",
            (HEAD
                    + "steps: [ { lay: a, mask: { polygon: \"10,10 20,10 20,20 10,20\", feather: 3 } } ]\n")
                .getBytes(StandardCharsets.UTF_8));
    PictureBits.same(picture(written, View.WHOLE), picture(drawn, View.WHOLE), "svg");
  }

  @Test
  void theGridSaysHowLargeTheDrawingIs() {
    // On a grid of twice the size the drawing's numbers are the grid's own.
    Path grid =
        desk.recipe(
            HEAD
                + "grid: [80, 60]\n"
                + "steps: [ { lay: a, mask: { any-of: [{ svg: o.svg }], widen: 4 } } ]\n");
    Path written =
        desk.write(
            "written.yaml",
            (HEAD
                    + "steps: [ { lay: a, mask: { polygon: \"10,10 20,10 20,20 10,20\", widen: 2 } } ]\n")
                .getBytes(StandardCharsets.UTF_8));
    PictureBits.same(picture(written, View.WHOLE), picture(grid, View.WHOLE), "grid");
  }

  @Test
  void allThatIsWrongIsToldAtOnceWithItsPlace() {
    drawing("bad.svg", "<path id='torn' d='M0 0L'/><line id='line'/>");
    desk.write("text.svg", "no drawing".getBytes(StandardCharsets.UTF_8));
    desk.write(
        "square.svg",
        "<svg viewBox='0 0 9 9'><rect width='9' height='9'/></svg>"
            .getBytes(StandardCharsets.UTF_8));
    Path recipe =
        desk.recipe(
            """
            duskply: 1
            base: dusk
            frames: { dusk: frames/0.tif, gone: frames/gone.tif }
            masks:
              a: { svg: o.svg, id: dor }
              b: { svg: missing.svg }
              c: { any-of: [{ svg: text.svg }, { svg: bad.svg, ids: [line, torn] }] }
              d: { svg: bad.svg, id: torn, within: [c] }
              e: { svg: square.svg }
              f: { svg: missing.svg, id: again }
              g: { svg: frames, except: [b, f] }
            steps:
              - { pop: gone, mask: a }
              - { group: [ { lay: dusk, mask: d } ], mask: { svg: o.svg, ids: [dor, none] } }
              - { lay: dusk, mask: { within: [e, g] } }
            """);
    assertThat(told(recipe))
        .containsExactlyInAnyOrder(
            "3:37 gone.tif is not there.",
            "5:24 o.svg has no element with the id `dor`; did you mean `door`?",
            "6:13 missing.svg is not there.",
            "7:24 text.svg cannot be read as XML in line 1, column 1; save it anew from the program that drew it.",
            "7:58 `line` in bad.svg is a `line`, which has no inside.",
            "7:64 the outline of `torn` in bad.svg cannot be followed at character 6: Expected x, found the end of the path.",
            "8:26 the outline of `torn` in bad.svg cannot be followed at character 6: Expected x, found the end of the path.",
            "9:13 square.svg is drawn on 9 × 9 (1.000 : 1) and the picture is 40 × 30 (1.333 : 1): another shape. Draw it over the base, or say in the drawing how it is to be fitted, such as preserveAspectRatio=\"xMidYMid meet\".",
            "11:13 frames is a folder; name a drawing in it.",
            "14:68 o.svg has no element with the id `dor`; did you mean `door`?",
            "14:73 o.svg has no element with the id `none`.");
  }

  @Test
  void whatIsWrongInEveryAlternateIsToldOnce() {
    Path recipe =
        desk.recipe(
            HEAD
                + """
                steps: [ { id: one, lay: a, mask: { svg: o.svg, id: dor } } ]
                alternates: { thin: { set: { one: { opacity: 0.5 } } } }
                deliverables: { out: { file: "<alternate>.tif", alternates: [main, thin] } }
                """);
    assertThat(told(recipe))
        .containsExactly("4:53 o.svg has no element with the id `dor`; did you mean `door`?");
  }

  @Test
  void aBaseThatIsNotThereHidesNothing() throws IOException {
    Files.delete(folder.resolve("frames/0.tif"));
    Path recipe = desk.recipe(HEAD + "steps: [ { lay: a, mask: { svg: missing.svg } } ]\n");
    assertThat(told(recipe)).hasSize(2).anyMatch(s -> s.endsWith("missing.svg is not there."));
  }

  @Test
  void drawingsThatNothingUsesAreNotOpened() {
    Path recipe =
        desk.recipe(
            HEAD
                + """
                masks: { gone: { svg: gone.svg } }
                steps:
                  - { lay: a, mask: gone, skip: true }
                  - { lay: a, mask: { svg: gone-too.svg }, opacity: 0 }
                  - { lay: a, mask: { svg: o.svg } }
                """);
    assertThat(picture(recipe, View.WHOLE).area().width()).isEqualTo(40);
  }

  @Test
  void aLinkOutOfTheFolderIsRefused(@TempDir Path elsewhere) throws IOException {
    Path secret = Files.writeString(elsewhere.resolve("o.svg"), SVG + "</svg>");
    Files.createSymbolicLink(folder.resolve("link.svg"), secret);
    Path recipe = desk.recipe(HEAD + "steps: [ { lay: a, mask: { svg: link.svg } } ]\n");
    assertThat(told(recipe))
        .singleElement()
        .asString()
        .contains("link.svg lies outside the recipe's folder");
    try (Engine engine = Engine.builder().allow(elsewhere).build()) {
      assertThat(told(recipe)).isNotEmpty();
      RecipeException allowed =
          catchThrowableOfType(RecipeException.class, () -> engine.open(recipe));
      assertThat(allowed).hasMessageContaining("link.svg shows no shape");
    }
  }

  @Test
  void styleSheetsAndOtherShapesAreNoticed() {
    desk.write(
        "wide.svg",
        ("<svg viewBox='0 0 90 30' preserveAspectRatio='none'><style>.a{fill-rule:evenodd}</style>"
                + "<rect width='9' height='9'/></svg>")
            .getBytes(StandardCharsets.UTF_8));
    Path recipe = desk.recipe(HEAD + "steps: [ { lay: a, mask: { svg: wide.svg } } ]\n");
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = engine.open(recipe)) {
      assertThat(composite.notices().stream().map(Problem::sentence))
          .anyMatch(s -> s.contains("it is fitted in as its preserveAspectRatio says"))
          .anyMatch(s -> s.contains("style sheets are not read"));
    }
  }

  /**
   * A drawing that is saved anew under the same name is another mask, to a store as well. Only what
   * is delivered asks the store.
   */
  @Test
  void whatIsKeptFollowsTheOutlineNotTheFile() throws IOException {
    Path recipe =
        desk.recipe(
            HEAD
                + "steps: [ { lay: a, mask: { svg: o.svg } } ]\n"
                + "deliverables: { out: { file: out.tif } }\n");
    try (Engine engine = Engine.builder().threads(1).keep(1 << 24).build()) {
      byte[] first = delivered(engine, recipe);
      // The same bounds, so that only the outline itself tells them apart.
      drawing("o.svg", "<polygon id='door' points='20,20 40,20 20,40 40,40'/>");
      assertThat(delivered(engine, recipe)).isNotEqualTo(first);
      drawing("o.svg", "<rect id='door' x='20' y='20' width='20' height='20'/>");
      assertThat(delivered(engine, recipe)).isEqualTo(first);
    }
  }

  private byte[] delivered(Engine engine, Path recipe) throws IOException {
    try (Composite composite = engine.open(recipe)) {
      composite.deliver(folder, Set.of(), Progress.SILENT);
    }
    return Files.readAllBytes(folder.resolve("out.tif"));
  }
}
