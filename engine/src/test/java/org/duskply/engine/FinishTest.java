package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.PictureBits;
import org.duskply.engine.testing.Pictures;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.RecipeException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The finish: a crop that moves no mask and costs nothing outside it. */
class FinishTest {
  private static final int WIDTH = 90;
  private static final int HEIGHT = 200;
  private static final String RECIPE =
      """
      duskply: 1
      base: dusk
      frames: { dusk: 0.tif, a: 1.tif }
      masks: { mid: { polygon: "20,20 80,30 40,180", feather: 9 } }
      """;
  private static final String STEPS =
      """
      steps:
        - { pop: a, mask: mid }
        - { adjust: [ { exposure: 0.5 } ], mask: { except: [mid] } }
      """;

  @TempDir Path folder;
  private Desk desk;

  @BeforeEach
  void frames() {
    desk = new Desk(folder, WIDTH, HEIGHT);
    desk.frame("0.tif", 0);
    desk.frame("1.tif", 1);
  }

  private static Planes picture(Engine engine, Path recipe, View view) {
    try (Composite composite = engine.open(recipe, view)) {
      return Pictures.planes(composite.image());
    }
  }

  private Planes picture(String text) {
    try (Engine engine = Engine.builder().build()) {
      return picture(engine, desk.recipe(text), View.WHOLE);
    }
  }

  @Test
  @Tag("bits")
  void aCropKeepsEveryBitOfItsPart() {
    Planes whole = picture(RECIPE + STEPS);
    Planes part =
        picture(RECIPE + STEPS + "finish: { crop: { left: 13, top: 27, width: 60, height: 101 } }");
    assertThat(part.area()).isEqualTo(Region.ofSize(60, 101));
    PictureBits.same(part(whole, new Region(13, 27, 73, 128)), part, "crop");
  }

  /** The same numbers at the origin. */
  private static Planes part(Planes whole, Region region) {
    Planes part = new Planes(Region.ofSize(region.width(), region.height()), whole.count());
    for (int p = 0; p < whole.count(); p++) {
      for (int y = 0; y < region.height(); y++) {
        System.arraycopy(
            whole.plane(p),
            whole.at(region.left(), region.top() + y),
            part.plane(p),
            part.at(0, y),
            region.width());
      }
    }
    return part;
  }

  @Test
  @Tag("bits")
  void stepsOfTheFinishAreThoseOfTheRecipeWhereverTheCropLies() {
    String last = "{ adjust: [ { contrast: 0.3 } ], mask: mid }, { lay: a, opacity: 0.2 }";
    Planes whole =
        picture(
            RECIPE
                + "steps: [ { pop: a, mask: mid }, "
                + last
                + " ]\nfinish: { crop: { left: 0, top: 0, width: 90, height: 200 } }");
    for (String crop : List.of("left: 40, top: 60", "left: 0, top: 0", "left: 1, top: 141")) {
      Planes part =
          picture(
              RECIPE
                  + "steps: [ { pop: a, mask: mid } ]\nfinish: { crop: { "
                  + crop
                  + ", width: 50, height: 59 }, steps: [ "
                  + last
                  + " ] }");
      int left = Integer.parseInt(crop.replaceAll("left: (\\d+).*", "$1"));
      int top = Integer.parseInt(crop.replaceAll(".*top: (\\d+)", "$1"));
      PictureBits.same(part(whole, new Region(left, top, left + 50, top + 59)), part, crop);
    }
  }

  @Test
  @Tag("bits")
  void aCroppedPictureIsTheSameHoweverTheWorkIsCut() {
    Path recipe =
        desk.recipe(
            RECIPE
                + STEPS
                + """
                finish: { crop: { left: 5, top: 33, width: 70, height: 150 } }
                deliverables: { print: print.tif, web: { file: web.png, depth: 16, long-edge: 60 } }
                """);
    List<short[]> first = null;
    for (PlanSettings settings :
        List.of(
            PlanSettings.DEFAULT,
            new PlanSettings(1, 512, true),
            new PlanSettings(7, 33, true),
            new PlanSettings(200, 90, false))) {
      try (Engine engine = Engine.builder().settings(settings).threads(3).build();
          Composite composite = engine.open(recipe)) {
        List<Delivered.File> files =
            composite.deliver(folder.resolve("out"), Set.of(), Progress.SILENT).files();
        assertThat(files.get(0).width()).isEqualTo(70);
        assertThat(files.get(0).height()).isEqualTo(150);
        assertThat(files.get(1).height()).isEqualTo(60);
        assertThat(files.get(1).width()).isEqualTo(28);
        List<short[]> codes = files.stream().map(f -> Pictures.codes(f.path())).toList();
        if (first != null) {
          assertThat(codes.get(0)).isEqualTo(first.get(0));
          assertThat(codes.get(1)).isEqualTo(first.get(1));
        }
        first = codes;
      }
    }
  }

  /** On an even grey, a vignette of the finish is that of a picture as large as the crop. */
  @Test
  @Tag("bits")
  void aVignetteOfTheFinishIsMeasuredByTheCrop() {
    desk.write("grey.tif", new TiffFile(90, 200, 3, 16, (x, y, c) -> 30_000).bytes());
    desk.write("small.tif", new TiffFile(50, 80, 3, 16, (x, y, c) -> 30_000).bytes());
    String vignette = "steps: [ { vignette: { stops: -2, begins: 0.1 } } ]";
    Planes cropped =
        picture(
            "duskply: 1\nbase: grey\nframes: { grey: grey.tif }\n"
                + "finish: { crop: { left: 31, top: 17, width: 50, height: 80 }, "
                + vignette
                + " }");
    Planes small = picture("duskply: 1\nbase: small\nframes: { small: small.tif }\n" + vignette);
    PictureBits.same(small, cropped, "vignette");
    Planes inSteps =
        picture(
            "duskply: 1\nbase: grey\nframes: { grey: grey.tif }\n"
                + "finish: { crop: { left: 31, top: 17, width: 50, height: 80 } }\n"
                + vignette);
    assertThat(PictureBits.sha256(inSteps)).isNotEqualTo(PictureBits.sha256(small));
  }

  @Test
  void nothingOutsideTheCropIsDecoded() {
    // Strips are 8 rows and units 16: rows 64 to 100 lie in units 4, 5 and 6 of 13.
    String crop = "finish: { crop: { left: 0, top: 64, width: 90, height: 36 } }\n";
    Path recipe = desk.recipe(RECIPE + STEPS + crop + "deliverables: { print: print.tif }\n");
    int[] block = {0};
    desk.write(
        "0.tif",
        desk.file(0)
            .damage(
                bytes -> {
                  if (block[0] < 8 || block[0] > 13) {
                    Arrays.fill(bytes, (byte) 0x55);
                  }
                  block[0]++;
                  return bytes;
                })
            .bytes());
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(recipe)) {
      assertThat(composite.explain().frames())
          .allMatch(frame -> frame.units() == 13 && frame.unitsRead().cardinality() == 3);
      assertThat(composite.deliver(folder.resolve("out"), Set.of(), Progress.SILENT).files())
          .hasSize(1);
    }
  }

  /** Edges of a scaled crop: distance times 90/grid width/reduction, half up. */
  @ParameterizedTest
  @CsvSource({
    "180, 400, 1, 7, 9, 100, 50, 4 5 54 30", // 3.5 → 4, 4.5 → 5, 53.5 → 54, 29.5 → 30
    "180, 400, 1, 0, 0, 180, 400, 0 0 90 200",
    "180, 400, 4, 2, 2, 178, 398, 0 0 23 50", // 0.25 → 0; the right edge stays the picture's
    "180, 400, 4, 6, 4, 10, 392, 1 1 2 50", // 0.75 → 1, 2 → 2, 0.5 → 1, 49.5 → 50
    "90, 200, 8, 84, 190, 3, 2, 11 24 12 25", // never less than a pixel: 10.5 → 11, 10.875 → 11
    "36, 80, 1, 1, 1, 2, 78, 3 3 8 198" // a larger base: 2.5 → 3, 7.5 → 8, 197.5 → 198
  })
  void aScaledCropRoundsItsEdgesHalfUp(
      int gridWidth,
      int gridHeight,
      int reduction,
      int left,
      int top,
      int width,
      int height,
      String edges) {
    Path recipe =
        desk.recipe(
            String.format(
                "%sgrid: [%d, %d]\n"
                    + "finish: { crop: { left: %d, top: %d, width: %d, height: %d } }\n",
                RECIPE, gridWidth, gridHeight, left, top, width, height));
    try (Engine engine = Engine.builder().build();
        PlannedComposite composite =
            (PlannedComposite) engine.open(recipe, View.WHOLE.reducedBy(reduction))) {
      Region shown = composite.shown();
      assertThat(shown.left() + " " + shown.top() + " " + shown.right() + " " + shown.bottom())
          .isEqualTo(edges);
      assertThat(composite.width()).isEqualTo(shown.width());
    }
  }

  @Test
  void aCropThatLeavesTheBaseIsAProblemAtItsPlace() {
    Path recipe =
        desk.recipe(RECIPE + "finish: { crop: { left: 31, top: 0, width: 60, height: 200 } }\n");
    try (Engine engine = Engine.builder().build()) {
      RecipeException told = catchThrowableOfType(RecipeException.class, () -> engine.open(recipe));
      assertThat(told)
          .hasMessageContaining(":5:17: ")
          .hasMessageContaining("the crop reaches to 91 × 200 px, out of the grid of 90 × 200");
    }
  }

  @Test
  void theCropIsExplained() {
    Path recipe =
        desk.recipe(
            RECIPE
                + STEPS
                + """
                finish:
                  crop: { left: 20, top: 40, width: 60, height: 100 }
                  steps: [ { id: last, adjust: [ { exposure: 1 } ], mask: { polygon: "20,40 50,40 50,140 20,140" } } ]
                """);
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(recipe)) {
      Explanation told = composite.explain();
      assertThat(told.crop())
          .isEqualTo(
              "The picture is cropped from 90 × 200 to 60 × 100 pixels: 20 at the left, 10 at the"
                  + " right, 40 at the top and 60 at the bottom fall away.");
      assertThat(told.finish()).singleElement().matches(line -> line.maskArea() == 0.5);
    }
  }

  @Test
  void viewsReachIntoTheFinish() {
    String text =
        RECIPE
            + STEPS
            + "finish: { steps: [ { id: last, adjust: [ { exposure: 1 } ] }, { lay: a } ] }";
    try (Engine engine = Engine.builder().build()) {
      Path recipe = desk.recipe(text);
      Planes until = picture(engine, recipe, View.WHOLE.until("last"));
      Planes only = picture(engine, recipe, View.WHOLE.only("finish/#1"));
      Planes base = picture(engine, recipe, View.WHOLE.only("last").skipping("last"));
      PictureBits.same(
          picture(RECIPE + STEPS.strip() + "\n  - { adjust: [ { exposure: 1 } ] }"),
          until,
          "until");
      for (int i = 0; i < only.plane(0).length; i++) {
        assertThat(only.plane(0)[i]).isEqualTo(2 * base.plane(0)[i]);
      }
    }
  }
}
