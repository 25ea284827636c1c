package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.duskply.engine.Explanation.StepLine;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.render.Job;
import org.duskply.engine.render.Output;
import org.duskply.engine.render.Store;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.Collected;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.Pictures;
import org.duskply.engine.testing.PngFile;
import org.duskply.engine.testing.TiffFile;
import org.duskply.engine.testing.reference.EncodedAxis;
import org.duskply.engine.testing.reference.HueWeight;
import org.duskply.recipe.Problem;
import org.duskply.recipe.RecipeException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Masks that are read off pictures, in whole recipes. */
class PictureMasksTest {
  private static final int WIDTH = 60;
  private static final int HEIGHT = 44;

  private static final String HEAD =
      """
      duskply: 1
      base: dusk
      frames: { dusk: 0.tif, a: 1.tif, b: 2.tif }
      """;

  @TempDir Path folder;
  private Desk desk;

  @BeforeEach
  void frames() {
    desk = new Desk(folder, WIDTH, HEIGHT);
    for (int i = 0; i < 3; i++) {
      desk.frame(i + ".tif", i);
    }
  }

  private Planes picture(String recipe) {
    return picture(recipe, View.WHOLE);
  }

  private Planes picture(String recipe, View view) {
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = engine.open(desk.recipe(HEAD + recipe), view)) {
      return Pictures.planes(composite.image());
    }
  }

  private List<Problem> notices(String recipe) {
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = engine.open(desk.recipe(HEAD + recipe))) {
      return composite.notices().stream().filter(n -> !n.path().startsWith("frames")).toList();
    }
  }

  private List<Problem> problems(String recipe) {
    try (Engine engine = Engine.builder().threads(1).build()) {
      Path file = desk.recipe(HEAD + recipe);
      RecipeException told = catchThrowableOfType(RecipeException.class, () -> engine.open(file));
      return told.problems().stream().filter(p -> !p.isNotice()).toList();
    }
  }

  private static double encodedLuminance(Planes picture, int i) {
    // The second row of the matrix of CSS Color 4 for sRGB.
    double y =
        87098.0 / 409605 * picture.plane(0)[i]
            + 175762.0 / 245763 * picture.plane(1)[i]
            + 12673.0 / 175545 * picture.plane(2)[i];
    return EncodedAxis.encode(y);
  }

  /**
   * Fails unless {@code got} is {@code from} with {@code step} mixed in where {@code of} is dark.
   */
  private static void mixedByDarkness(Planes got, Planes from, Planes step, Planes of) {
    int partly = 0;
    for (int i = 0; i < WIDTH * HEIGHT; i++) {
      double v = encodedLuminance(of, i);
      double m = 1 - HueWeight.smooth(0.4, 0.6, v);
      partly += m > 0 && m < 1 ? 1 : 0;
      for (int p = 0; p < 3; p++) {
        double b = from.plane(p)[i];
        double want = b + m * (step.plane(p)[i] - b);
        // 2e-6 of v, whose slope here is 7.5, times the difference; and a rounding of the mix.
        double difference = Math.abs(step.plane(p)[i] - b);
        Close.within("pixel " + i, got.plane(p)[i], want, 15e-6 * difference + 1e-6);
      }
    }
    assertThat(partly).isGreaterThan(100);
  }

  @Test
  void aMaskOfBrightnessSeesThePictureBelowItsStep() {
    String before = "steps: [ { pop: a }, { adjust: [ { exposure: -0.7 } ] }";
    String mask = "masks: { dim: { luminance: { to: 0.4, soft: 0.2 } } }\n";
    Planes below = picture(before + " ]");
    Planes got = picture(mask + before + ", { lay: b, mask: dim } ]");
    mixedByDarkness(got, below, picture("steps: [ { lay: b } ]"), below);
  }

  @Test
  void inAGroupItSeesThePictureInTheGroup() {
    String mask = "masks: { dim: { luminance: { to: 0.4, soft: 0.2 } } }\n";
    Planes inside = picture("steps: [ { adjust: [ { exposure: 1 } ] }, { lay: a, opacity: 0.5 } ]");
    Planes got =
        picture(
            mask
                + "steps: [ { adjust: [ { exposure: 1 } ] },"
                + " { group: [ { lay: a, opacity: 0.5 }, { lay: b, mask: dim } ] } ]");
    mixedByDarkness(got, inside, picture("steps: [ { lay: b } ]"), inside);
  }

  @Test
  void theSameMaskOfTwoStepsSeesTwoPictures() {
    String mask = "masks: { dim: { luminance: { to: 0.4, soft: 0.2 } } }\n";
    String first = "{ adjust: [ { exposure: 1.5 } ], mask: dim }";
    Planes once = picture(mask + "steps: [ " + first + " ]");
    Planes twice = picture(mask + "steps: [ " + first + ", { lay: b, mask: dim } ]");
    mixedByDarkness(twice, once, picture("steps: [ { lay: b } ]"), once);
  }

  @Test
  void aNamedFrameIsSeenAsItArrives() {
    String mask =
        "masks: { dim: { any-of: [ { luminance: { to: 0.4, soft: 0.2, frame: a } } ] } }\n";
    Planes got =
        picture(mask + "steps: [ { adjust: [ { exposure: 3 } ] }, { lay: b, mask: dim } ]");
    Planes below = picture("steps: [ { adjust: [ { exposure: 3 } ] } ]");
    Planes seen = picture("steps: [ { lay: a } ]");
    for (int i = 0; i < WIDTH * HEIGHT; i++) {
      double m = 1 - HueWeight.smooth(0.4, 0.6, encodedLuminance(seen, i));
      if (m == 0) {
        assertThat(got.plane(0)[i]).isEqualTo(below.plane(0)[i]);
      }
    }
    mixedByDarkness(got, below, picture("steps: [ { lay: b } ]"), seen);
  }

  /** Beyond the border a mask of a picture goes on by its edge: a bright rim stays bright. */
  @Test
  void aSoftenedMaskOfAPictureDoesNotFadeAtTheBorder() {
    desk.write("3.tif", new TiffFile(WIDTH, HEIGHT, 3, 8, (x, y, c) -> 200).strips(8).bytes());
    Planes got =
        picture(
            "masks: { bright: { luminance: { from: 0.5, frame: dusk }, feather: 40 } }\n"
                    .replace("frame: dusk", "frame: even")
                + "steps: [ { lay: b, mask: bright } ]",
            View.WHOLE,
            "even: 3.tif");
    Planes b = picture("steps: [ { lay: b } ]");
    assertThat(got.plane(0)).isEqualTo(b.plane(0));
  }

  private Planes picture(String recipe, View view, String frame) {
    String head = HEAD.replace("b: 2.tif", "b: 2.tif, " + frame);
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = engine.open(desk.recipe(head + recipe), view)) {
      return Pictures.planes(composite.image());
    }
  }

  /** Of the frame that is looked at, nothing is decoded where that part of the mask is not. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "any-of: [ { luminance: { to: 0.5, frame: a }, within: [top] }, bottom ]",
        "polygon: \"0,0 60,0 60,44 0,44\", except: [ { luminance: { to: 0.5, frame: a }, within: [top] } ]",
        "except: [ { luminance: { to: 0.5, frame: a }, feather: 1, within: [top] } ]",
        "inverted: true, within: [ { luminance: { to: 0.5, frame: a }, within: [top] } ]"
      })
  void aFrameIsReadOnlyWhereTheMaskOfItShows(String mask) {
    String text =
        HEAD
            + "masks: { top: { polygon: \"0,0 60,0 60,9 0,9\" }, bottom: { polygon: \"0,30 60,30 60,44 0,44\" } }\n"
            + "steps: [ { lay: b, mask: { "
            + mask
            + " } } ]\n";
    try (Engine engine = Engine.builder().threads(1).build();
        PlannedComposite composite = (PlannedComposite) engine.open(desk.recipe(text))) {
      Node picture = composite.version().picture();
      Region canvas = composite.canvas();
      List<Output> outputs = List.of(new Output(picture, canvas, new Collected(canvas)));
      Plan plan = composite.plan(outputs);
      try (Job job = new Job(plan, outputs, 8, Store.NONE)) {
        for (int f = 0; f < plan.frames().size(); f++) {
          if (plan.frames().get(f).name().equals("a")) {
            assertThat(job.unitsNeeded(f).size()).isEqualTo(1);
          } else {
            assertThat(job.unitsNeeded(f).size()).isEqualTo(plan.frames().get(f).source().units());
          }
        }
      }
    }
  }

  // Painted masks

  private static final String PAINTED =
      "masks: { brushed: { image: masks/m.png } }\nsteps: [ { lay: b, mask: brushed } ]\n";

  @Test
  void aPaintedMaskIsItsStoredValueOverFullScale() {
    Planes dusk = picture("");
    Planes b = picture("steps: [ { lay: b } ]");
    for (int bits : new int[] {8, 16}) {
      double full = bits == 8 ? 255 : 65535;
      // A grey picture with a curve of its own (gAMA 1/2.2), which is not used.
      PngFile file =
          new PngFile(WIDTH, HEIGHT, 0, bits, (x, y, c) -> (int) (full * x / (WIDTH - 1)))
              .chunk("gAMA", PngFile.ints(45455));
      desk.write("masks/m.png", file.bytes());
      Planes got = picture(PAINTED);
      for (int i = 0; i < WIDTH * HEIGHT; i++) {
        double m = Math.floor(full * (i % WIDTH) / (WIDTH - 1)) / full;
        double want = dusk.plane(1)[i] + m * (b.plane(1)[i] - dusk.plane(1)[i]);
        Close.within("pixel " + i, got.plane(1)[i], want, 1e-6);
      }
      assertThat(notices(PAINTED)).isEmpty();
    }
  }

  @Test
  void aColourFileIsItsFirstChannelAndSaysSo() {
    desk.write(
        "masks/m.png",
        new PngFile(WIDTH, HEIGHT, 6, 8, (x, y, c) -> c == 0 ? 255 * (x % 2) : c == 3 ? 7 : 99)
            .bytes());
    Planes got = picture(PAINTED);
    Planes dusk = picture("");
    Planes b = picture("steps: [ { lay: b } ]");
    for (int i = 0; i < WIDTH * HEIGHT; i++) {
      Planes want = i % WIDTH % 2 == 1 ? b : dusk;
      assertThat(got.plane(2)[i]).isEqualTo(want.plane(2)[i]);
    }
    Problem notice = notices(PAINTED).get(0);
    assertThat(notice.sentence()).contains("masks/m.png").contains("first of its channels");
    assertThat(notice.place().line()).isEqualTo(4);
  }

  @Test
  void aPaintedMaskOfAnotherSizeIsRefusedWithBothSizes() {
    desk.write("masks/m.png", new PngFile(WIDTH, 40, 0, 8, (x, y, c) -> 1).bytes());
    List<Problem> problems = problems(PAINTED);
    assertThat(problems).hasSize(1);
    assertThat(problems.get(0).sentence()).contains("60 × 40").contains("60 × 44");
    assertThat(problems.get(0).place().line()).isEqualTo(4);
  }

  @Test
  void aPaintedMaskMustBeThereAndInTheFolder() {
    assertThat(problems(PAINTED).get(0).sentence()).contains("m.png is not there");
    assertThat(problems(PAINTED.replace("masks/m.png", "../m.png")).get(0).sentence())
        .contains("out of the recipe's folder");
    desk.write("masks/m.png", new byte[] {1, 2, 3});
    assertThat(problems(PAINTED)).hasSize(1);
  }

  @Test
  void aPaintedMaskOfTheGridsSizeIsScaled() {
    // Twice the base: each 2 × 2 square holds one value, so that all of it comes back.
    desk.write(
        "masks/m.png",
        new PngFile(2 * WIDTH, 2 * HEIGHT, 0, 8, (x, y, c) -> x / 2 < 30 ? 255 : 0).bytes());
    String grid = "grid: [120, 88]\n";
    Planes got = picture(grid + PAINTED);
    Planes dusk = picture("");
    Planes b = picture("steps: [ { lay: b } ]");
    for (int i = 0; i < WIDTH * HEIGHT; i++) {
      int x = i % WIDTH;
      if (x < 27 || x > 32) { // within three pixels of the edge it is soft
        assertThat(got.plane(0)[i]).isEqualTo((x < 30 ? b : dusk).plane(0)[i]);
      }
    }
    assertThat(problems(grid.replace("120, 88", "180, 132") + PAINTED).get(0).sentence())
        .contains("120 × 88")
        .contains("60 × 44")
        .contains("180 × 132");
  }

  @Test
  void previewsSeePaintedMasksByTheirMeans() {
    desk.write("masks/m.png", new PngFile(WIDTH, HEIGHT, 0, 8, (x, y, c) -> 85 * (x % 4)).bytes());
    Planes got = picture(PAINTED, View.WHOLE.reducedBy(4));
    Planes dusk = picture("", View.WHOLE.reducedBy(4));
    Planes b = picture("steps: [ { lay: b } ]", View.WHOLE.reducedBy(4));
    for (int i = 0; i < got.plane(0).length; i++) {
      double want = 0.5 * dusk.plane(0)[i] + 0.5 * b.plane(0)[i];
      Close.within("pixel " + i, got.plane(0)[i], want, 1e-6);
    }
  }

  // Where steps show

  private static final String SHOWN =
      """
      masks:
        left: { polygon: "0,0 30,0 30,44 0,44" }
        top: { polygon: "0,0 60,0 60,22 0,22" }
        lit: { steps: [flashes, "#2"] }
      steps:
        - id: flashes
          mask: top
          opacity: 0.5
          group:
            - { pop: a, mask: left, opacity: 0.8 }
            - { pop: a, skip: true }
            - { adjust: [ { exposure: 1 } ], mask: { except: [left] }, opacity: 0.25 }
        - { lay: a, mask: { within: [left], except: [top] }, opacity: 0.75 }
        - { lay: b, mask: lit }
      """;

  @Test
  void whereStepsShowIsTheGreatestOfMaskTimesOpacity() {
    Planes below = picture(SHOWN, View.WHOLE.until("#2"));
    Planes got = picture(SHOWN);
    Planes b = picture("steps: [ { lay: b } ]");
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++) {
        boolean left = x < 30;
        boolean top = y < 22;
        double m = top ? 0.5 * (left ? 0.8 : 0.25) : left ? 0.75 : 0;
        int i = y * WIDTH + x;
        double want = below.plane(0)[i] + m * (b.plane(0)[i] - below.plane(0)[i]);
        Close.within(x + "," + y, got.plane(0)[i], want, 1e-6);
      }
    }
  }

  @Test
  void aStepThatIsLeftOutShowsNowhere() {
    String recipe = SHOWN.replace("{ lay: a, mask:", "{ lay: a, skip: true, mask:");
    Planes got = picture(recipe);
    Planes below = picture(recipe, View.WHOLE.until("#2"));
    Planes b = picture("steps: [ { lay: b } ]");
    int low = got.at(5, 30);
    assertThat(got.plane(0)[low]).isEqualTo(below.plane(0)[low]);
    int high = got.at(5, 5);
    Close.within(
        "above", got.plane(0)[high], 0.6 * below.plane(0)[high] + 0.4 * b.plane(0)[high], 1e-6);
  }

  @Test
  void aStepCanOnlyAskForStepsBeforeIt() {
    assertThat(asks("[ { lay: a, mask: lit }, { id: x, lay: b } ]"))
        .contains("the mask `lit` asks where `x` shows, which comes later");
    assertThat(asks("[ { id: x, lay: a, mask: lit } ]")).contains("which is this step itself");
    assertThat(asks("[ { id: x, group: [ { lay: a, mask: lit } ] } ]"))
        .contains("which is the group that this step is in");
    assertThat(asks("[ { group: [ { id: x, lay: a } ], mask: { except: [lit] } } ]"))
        .contains("this mask asks where `x` shows, which is in this group");
    assertThat(
            notices(
                "masks: { lit: { steps: [x] } }\nsteps: [ { id: x, lay: a }, { lay: b, mask: lit } ]\n"))
        .isEmpty();
  }

  private String asks(String steps) {
    List<Problem> problems = problems("masks: { lit: { steps: [x] } }\nsteps:\n  " + steps + "\n");
    assertThat(problems).hasSize(1);
    assertThat(problems.get(0).place().line()).isEqualTo(6);
    return problems.get(0).sentence();
  }

  // Notices and words

  @Test
  void aMaskThatIsEmptyOnThePictureIsANotice() {
    List<Problem> notices =
        notices(
            """
            masks: { off: { polygon: "100,100 120,100 110,130" }, on: { polygon: "0,0 9,0 9,9" } }
            steps:
              - { lay: a, mask: off }
              - { lay: b, mask: on }
              - { lay: b, mask: { within: [on], any-of: [off] } }
              - { lay: b, mask: { strokes: [ { points: "-50,-50", radius: 20 } ] } }
              - { lay: b, mask: { except: [off] } }
            """);
    assertThat(notices.stream().map(n -> n.place().line())).containsExactly(6, 8, 9);
    assertThat(notices.get(0).sentence())
        .isEqualTo("This mask is empty on the picture, so the step shows nowhere.");
  }

  @Test
  void edgesThatBuildOnEachOtherReachOnlySoFar() {
    StringBuilder masks = new StringBuilder("masks:\n  m0: { polygon: \"0,0 9,0 9,9\" }\n");
    for (int i = 1; i <= 3; i++) {
      masks.append("  m" + i + ": { any-of: [m" + (i - 1) + "], feather: 1000 }\n");
    }
    assertThat(
            notices(masks + "steps: [ { lay: a, mask: m2 }, { lay: b, mask: m3, skip: true } ]\n"))
        .isEmpty();
    masks.append("  m4: { any-of: [m3], feather: 1000 }\n  m5: { any-of: [m4], feather: 1000 }\n");
    List<Problem> problems = problems(masks + "steps: [ { lay: a, mask: m5 } ]\n");
    assertThat(problems.get(0).sentence()).contains("8192 is the most");
  }

  @Test
  void wordsSayWhatAMaskGoesBy() {
    desk.write("masks/m.png", new PngFile(WIDTH, HEIGHT, 0, 8, (x, y, c) -> 1).bytes());
    Map<String, StepLine> lines =
        explain(
            """
            masks:
              left: { polygon: "0,0 30,0 30,44 0,44" }
              dim: { luminance: { to: 0.25, soft: 0.1 } }
            steps:
              - { id: s1, lay: a, mask: dim }
              - { id: s2, lay: a, mask: { luminance: { from: 0.5, frame: dusk }, within: [left] } }
              - { id: s3, lay: a, mask: { hue: { centre: 255, width: 60, soft: 20 } } }
              - { id: s4, lay: a, mask: { image: masks/m.png } }
              - { id: s5, lay: a, mask: { flash: { frame: a } } }
              - { id: s6, lay: a, mask: left }
              - { id: s7, lay: a, mask: { steps: [s6] } }
              - { id: s8, lay: a, mask: { steps: [s1, s2, s6] } }
              - { id: s9, lay: a, mask: { any-of: [dim, left] } }
            """);
    String unknown = "a share that depends on the picture).";
    assertThat(where(lines.get("s1")))
        .isEqualTo(
            "inside the mask dim (those parts of the picture below whose encoded brightness is at"
                + " most 0.25, fading out over a further 0.1; "
                + unknown);
    assertThat(where(lines.get("s2")))
        .isEqualTo(
            "in those parts of the frame dusk whose encoded brightness is at least 0.5, kept inside"
                + " the mask left ("
                + unknown);
    assertThat(where(lines.get("s3")))
        .isEqualTo(
            "in those parts of the picture below whose hue lies within 30° of 255°, fading out over"
                + " a further 20° ("
                + unknown);
    assertThat(where(lines.get("s4")))
        .isEqualTo("through the mask painted in masks/m.png (" + unknown);
    assertThat(where(lines.get("s5")))
        .isEqualTo(
            "in those parts where the frame a is brighter than the base by 0.5 stops or more, fading"
                + " out down to 0.25 stops ("
                + unknown);
    assertThat(where(lines.get("s7")))
        .isEqualTo("inside what the step s6 covers (50.0 % of the picture).");
    assertThat(where(lines.get("s8")))
        .isEqualTo(
            "inside what the steps s1, s2 and s6 cover, the stronger where they meet (" + unknown);
    assertThat(where(lines.get("s9")))
        .isEqualTo(
            "inside the masks dim and left taken together, the stronger where they meet ("
                + unknown);
    assertThat(lines.get("s1").maskArea()).isNaN();
    assertThat(lines.get("s7").maskArea()).isEqualTo(0.5);
  }

  private static String where(StepLine line) {
    String before = "The frame a (1.tif) is laid over the picture, ";
    assertThat(line.sentence()).startsWith(before);
    return line.sentence().substring(before.length());
  }

  private Map<String, StepLine> explain(String recipe) {
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = engine.open(desk.recipe(HEAD + recipe))) {
      return composite.explain().steps().stream()
          .collect(Collectors.toMap(StepLine::name, line -> line));
    }
  }

  @Test
  void theFloorIsEnoughForMasksThatLookFar() {
    String recipe =
        """
        masks: { glow: { luminance: { from: 0.5, soft: 0.2 }, feather: 60 } }
        steps: [ { pop: a }, { lay: b, mask: glow }, { pop: b, mask: { flash: { frame: a } } } ]
        deliverables: { print: print.tif }
        """;
    Path file = desk.recipe(HEAD + recipe);
    long floor;
    try (Engine engine = Engine.builder().memory(1).build();
        Composite composite = engine.open(file)) {
      floor =
          catchThrowableOfType(
                  MemoryException.class,
                  () -> composite.deliver(folder.resolve("out"), Set.of(), Progress.SILENT))
              .needed();
    }
    try (Engine engine = Engine.builder().memory(floor).threads(4).build();
        Composite composite = engine.open(file)) {
      Delivered delivered = composite.deliver(folder.resolve("out"), Set.of(), Progress.SILENT);
      assertThat(delivered.peakBytes()).isLessThanOrEqualTo(floor);
    }
  }
}
