package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import net.imglib2.img.array.ArrayImg;
import net.imglib2.img.array.ArrayImgs;
import net.imglib2.img.basictypeaccess.array.ShortArray;
import net.imglib2.type.numeric.integer.UnsignedShortType;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.PictureBits;
import org.duskply.engine.testing.Pictures;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.Problem;
import org.duskply.recipe.RecipeException;
import org.duskply.recipe.RecipeReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the engine promises whatever the recipe. */
class LawsTest {
  @TempDir Path folder;

  private static final String HEAD =
      """
      duskply: 1
      base: dusk
      frames: { dusk: frames/0.tif, a: frames/1.tif, b: frames/2.tif }
      """;

  private Desk desk(int width, int height) {
    Desk desk = new Desk(folder, width, height);
    for (int i = 0; i < 3; i++) {
      desk.frame("frames/" + i + ".tif", i);
    }
    return desk;
  }

  private Delivered deliver(Engine engine, Path recipe) {
    try (Composite composite = engine.open(recipe)) {
      return composite.deliver(folder.resolve("out"), Set.of(), Progress.SILENT);
    }
  }

  private List<String> filesIn(String sub) throws IOException {
    try (Stream<Path> files = Files.walk(folder.resolve(sub))) {
      return files
          .filter(Files::isRegularFile)
          .map(f -> f.getFileName().toString())
          .sorted()
          .toList();
    }
  }

  // Law 1: mixing

  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void aRecipeWithoutStepsReturnsEveryCode(NamedSpace space) {
    // 65,536 greys, then random triples; a profile's own codes in, the same codes out.
    Random random = new Random(5);
    int[] triples = random.ints(3 * 65536, 0, 65536).toArray();
    byte[] profile = org.duskply.engine.colour.IccWriter.profile(space);
    TiffFile file =
        new TiffFile(
                256,
                512,
                3,
                16,
                (x, y, c) -> y < 256 ? 256 * y + x : triples[3 * (256 * (y - 256) + x) + c])
            .compression(8)
            .strips(64)
            .raw(34675, 7, profile.length, profile);
    Desk desk = new Desk(folder, 256, 512);
    Path frame = desk.write("frames/codes.tif", file.bytes());
    Path recipe =
        desk.recipe(
            "duskply: 1\nbase: codes\nframes: { codes: frames/codes.tif }\n"
                + "deliverables: { print: { file: print.tif, profile: "
                + space.key()
                + " } }\n");
    try (Engine engine = Engine.builder().build()) {
      Delivered delivered = deliver(engine, recipe);
      assertThat(Pictures.codes(delivered.files().get(0).path())).isEqualTo(Pictures.codes(frame));
      assertThat(delivered.files().get(0).clipped()).isZero();
    }
  }

  @Test
  void whatNoMaskShowsKeepsItsCodesAndWhatAMaskShowsFullyIsTheFrame() {
    Desk desk = desk(40, 30);
    Path recipe =
        desk.recipe(
            HEAD
                + """
                steps:
                  - { lay: a, mask: { polygon: "10,5 30,5 30,20 10,20" } }
                  - { lay: b, opacity: 0 }
                deliverables: { print: print.tif }
                """);
    try (Engine engine = Engine.builder().build()) {
      short[] out = Pictures.codes(deliver(engine, recipe).files().get(0).path());
      for (int y = 0; y < 30; y++) {
        for (int x = 0; x < 40; x++) {
          boolean inside = x >= 10 && x < 30 && y >= 5 && y < 20;
          for (int c = 0; c < 3; c++) {
            assertThat(out[(y * 40 + x) * 3 + c] & 0xFFFF)
                .isEqualTo(desk.sample(inside ? 1 : 0, x, y, c));
          }
        }
      }
    }
  }

  @Test
  void lightAboveWhiteSurvivesTheWay() {
    // Up three stops and down again: powers of two are exact, so every code comes back.
    Desk desk = desk(40, 30);
    Path recipe =
        desk.recipe(
            HEAD
                + """
                steps:
                  - adjust: [ { exposure: 3 } ]
                  - adjust: [ { exposure: -3 } ]
                deliverables: { print: print.tif }
                """);
    try (Engine engine = Engine.builder().build()) {
      short[] out = Pictures.codes(deliver(engine, recipe).files().get(0).path());
      assertThat(out).isEqualTo(Pictures.codes(folder.resolve("frames/0.tif")));
    }
  }

  @Test
  void halfOfWhiteOverBlackIsCode188() {
    // Half the light of white is 188 of 255 by IEC 61966-2-1; mixing encoded values would give 128.
    Desk desk = new Desk(folder, 4, 4);
    desk.write("frames/black.tif", new TiffFile(4, 4, 3, 8, (x, y, c) -> 0).bytes());
    desk.write("frames/white.tif", new TiffFile(4, 4, 3, 8, (x, y, c) -> 255).bytes());
    for (String step :
        List.of(
            "lay: white",
            "pop: white",
            "lay: white, blend: screen",
            "lay: white, blend: plus-lighter")) {
      Path recipe =
          desk.recipe(
              "duskply: 1\nbase: black\nframes: { black: frames/black.tif, white: frames/white.tif }\n"
                  + "steps: [ { "
                  + step
                  + ", opacity: 0.5 } ]\n"
                  + "deliverables: { web: { file: web.tif, depth: 8 } }\n");
      try (Engine engine = Engine.builder().build();
          Composite composite = engine.open(recipe)) {
        float value = Pictures.planes(composite.image()).plane(0)[0];
        assertThat(value).as(step).isEqualTo(0.5f);
        assertThat(Math.floor(255 * (1.055 * StrictMath.pow(value, 1 / 2.4) - 0.055) + 0.5))
            .isEqualTo(188);
      }
    }
  }

  // Law 5: memory

  @Test
  void theFloorIsEnoughAndOneByteLessIsRefused() {
    Desk desk = desk(200, 300);
    Path recipe =
        desk.recipe(
            HEAD
                + """
                steps:
                  - { pop: a, mask: { polygon: "20,20 150,30 120,250", feather: 20 } }
                  - { lay: b, mask: { polygon: "0,0 200,0 200,100 0,100", feather: 3 } }
                deliverables: { print: print.tif, web: { file: web.jpg, long-edge: 100 } }
                """);
    long floor;
    try (Engine engine = Engine.builder().memory(1).build()) {
      MemoryException refused =
          catchThrowableOfType(MemoryException.class, () -> deliver(engine, recipe));
      floor = refused.needed();
      assertThat(refused)
          .hasMessageContaining("needs at least")
          .hasMessageContaining("may be used");
    }
    assertThat(Files.exists(folder.resolve("out/print.tif"))).isFalse();
    try (Engine engine = Engine.builder().memory(floor).threads(4).build()) {
      assertThat(deliver(engine, recipe).peakBytes()).isLessThanOrEqualTo(floor);
    }
    try (Engine engine = Engine.builder().memory(floor - 1).build()) {
      assertThatThrownBy(() -> deliver(engine, recipe)).isInstanceOf(MemoryException.class);
    }
  }

  // Law 6: nothing half-written

  @Test
  void aDamagedFrameLeavesTheOldFileAndNothingElse() throws IOException {
    Desk desk = desk(60, 200);
    Path out = desk.write("out/print.tif", new byte[] {1, 2, 3});
    byte[] torn = desk.file(1).bytes();
    Arrays.fill(torn, torn.length / 2, torn.length / 2 + 200, (byte) 0x55);
    desk.write("frames/1.tif", torn);
    Path recipe = desk.recipe(HEAD + "steps: [ { pop: a } ]\ndeliverables: { print: print.tif }\n");
    try (Engine engine = Engine.builder().build()) {
      assertThatThrownBy(() -> deliver(engine, recipe))
          .isInstanceOf(DuskplyException.class)
          .hasMessageContaining("1.tif");
    }
    assertThat(Pictures.bytes(out)).containsExactly(1, 2, 3);
    assertThat(filesIn("out")).containsExactly("print.tif");
  }

  @Test
  void acancelledRenderingLeavesTheOldFileAndNothingElse() throws IOException {
    Desk desk = desk(60, 2000);
    Path out = desk.write("out/print.tif", new byte[] {1, 2, 3});
    Path recipe = desk.recipe(HEAD + "steps: [ { pop: a } ]\ndeliverables: { print: print.tif }\n");
    Progress half =
        new Progress() {
          private volatile double share;

          @Override
          public void reached(double share) {
            this.share = share;
          }

          @Override
          public boolean cancelled() {
            return share > 0.5;
          }
        };
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(recipe)) {
      assertThatThrownBy(() -> composite.deliver(folder.resolve("out"), Set.of(), half))
          .isInstanceOf(CancelledException.class);
    }
    assertThat(Pictures.bytes(out)).containsExactly(1, 2, 3);
    assertThat(filesIn("out")).containsExactly("print.tif");
  }

  // Law 7: all problems at once

  @Test
  void everythingWrongWithTheFramesIsToldAtOnceWithItsPlace() {
    Desk desk = desk(40, 30);
    desk.write("frames/2.tif", new Desk(folder, 41, 30).file(2).bytes());
    desk.write("frames/3.tif", new byte[0]);
    Path recipe =
        desk.recipe(
            """
            duskply: 1
            base: dusk
            frames:
              dusk: frames/0.tif
              gone: frames/gone.tif
              other: frames/2.tif
              empty: frames/3.tif
            steps: [ { pop: gone }, { pop: other }, { pop: empty } ]
            """);
    try (Engine engine = Engine.builder().build()) {
      RecipeException told = catchThrowableOfType(RecipeException.class, () -> engine.open(recipe));
      List<Problem> problems = told.problems().stream().filter(p -> !p.isNotice()).toList();
      assertThat(problems).hasSize(3);
      assertThat(problems.stream().map(p -> p.place().line())).containsExactlyInAnyOrder(5, 6, 7);
      assertThat(told)
          .hasMessageContaining("frames/gone.tif")
          .hasMessageContaining("41 × 30")
          .hasMessageContaining("40 × 30")
          .hasMessageContaining("3.tif");
    }
  }

  @Test
  void aBaseThatIsTransparentIsRefused() {
    Desk desk = desk(40, 30);
    desk.write(
        "frames/0.tif",
        new TiffFile(40, 30, 4, 16, (x, y, c) -> 30000).shorts(338, 2).strips(8).bytes());
    Path recipe = desk.recipe(HEAD + "steps: [ { pop: a } ]\n");
    try (Engine engine = Engine.builder().build()) {
      assertThatThrownBy(() -> engine.open(recipe))
          .isInstanceOf(RecipeException.class)
          .hasMessageContaining("transparent");
    }
  }

  // Law 8: cost follows what the masks show

  @Test
  void framesThatNothingShowsAreNotEvenOpened() {
    Desk desk = desk(40, 30);
    desk.write("frames/2.tif", "not a picture".getBytes(java.nio.charset.StandardCharsets.UTF_8));
    Path recipe =
        desk.recipe(
            HEAD
                + """
                steps:
                  - { pop: b, skip: true }
                  - { pop: b, opacity: 0 }
                  - { pop: a, mask: { polygon: "0,0 10,0 10,10" } }
                deliverables: { print: print.tif }
                """);
    try (Engine engine = Engine.builder().build()) {
      assertThat(deliver(engine, recipe).files()).hasSize(1);
    }
  }

  @Test
  void aDamagedStripThatNoMaskShowsHurtsNobody() {
    // Rows 96 to 103 of the frame are torn; the mask with its feather ends far above.
    Desk desk = desk(60, 200);
    int[] block = {0};
    desk.write(
        "frames/1.tif",
        desk.file(1)
            .damage(
                bytes -> {
                  if (block[0]++ == 12) {
                    Arrays.fill(bytes, (byte) 0x55);
                  }
                  return bytes;
                })
            .bytes());
    Path shown =
        desk.recipe(
            HEAD
                + "steps: [ { pop: a, mask: { polygon: \"0,10 60,10 60,60 0,60\", feather: 8 } } ]\n"
                + "deliverables: { print: print.tif }\n");
    try (Engine engine = Engine.builder().build()) {
      assertThat(deliver(engine, shown).files()).hasSize(1);
      Path torn = desk.recipe(HEAD + "steps: [ { pop: a } ]\ndeliverables: { print: print.tif }\n");
      assertThatThrownBy(() -> deliver(engine, torn)).isInstanceOf(DuskplyException.class);
    }
  }

  /** Whatever a step does with its frames, none is decoded where its mask shows nothing. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "lay: a, blend: soft-light, blend-in: encoded",
        "lay: a, blend: luminosity",
        "pop: a, compare: luminance, treat: [ { exposure: 1 } ]",
        "group: [ { pop: a }, { dodge: 0.5 } ], treat: [ { contrast: 0.2 } ]"
      })
  void stepsRunWhereTheirMasksShow(String step) {
    Desk desk = desk(40, 320); // strips of 8 rows, read in units of 16
    Path recipe =
        desk.recipe(
            HEAD + "steps: [ { " + step + ", mask: { polygon: \"0,32 40,32 40,48 0,48\" } } ]\n");
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = engine.open(recipe)) {
      Explanation explanation = composite.explain();
      Explanation.FrameLine base = explanation.frames().get(0);
      Explanation.FrameLine frame = explanation.frames().get(1);
      assertThat(base.unitsRead()).isEqualTo(base.units());
      // The mask ends on the rows of a band of 64, and shows in 16 of them.
      assertThat(frame.name()).isEqualTo("a");
      assertThat(frame.unitsRead()).isEqualTo(1);
    }
  }

  // Odd shapes and sizes

  @Test
  void picturesOfOnePixelAndOfOddShapesAreMade() {
    for (int[] size : new int[][] {{1, 1}, {1, 300}, {3000, 2}, {513, 65}}) {
      Desk desk = desk(size[0], size[1]);
      Path recipe =
          desk.recipe(
              HEAD
                  + """
                  steps:
                    - { pop: a, mask: { polygon: "-5,-5 900,0 900,400 0,400", feather: 40 } }
                    - { lay: b, opacity: 0.5 }
                  deliverables: { print: print.tif, web: web.jpg, screen: { file: s.png, long-edge: 7 } }
                  """);
      try (Engine engine = Engine.builder().build()) {
        assertThat(deliver(engine, recipe).files()).hasSize(3);
      }
    }
  }

  @Test
  void threeHundredStepsAndTenGroupsDeepAreMade() {
    Desk desk = desk(30, 20);
    StringBuilder text = new StringBuilder(HEAD).append("steps:\n");
    for (int i = 0; i < 300; i++) {
      text.append("  - { pop: ")
          .append(i % 2 == 0 ? "a" : "b")
          .append(", opacity: 0.01, mask: { polygon: \"0,0 30,0 ")
          .append(i % 30)
          .append(",20\" } }\n");
    }
    text.append("  - ")
        .append("group: [ { ".repeat(9))
        .append("group: [ { pop: a } ]")
        .append(" } ]".repeat(9))
        .append("\n");
    text.append("deliverables: { print: print.tif }\n");
    try (Engine engine = Engine.builder().build()) {
      assertThat(deliver(engine, desk.recipe(text.toString())).files()).hasSize(1);
    }
  }

  // One engine, many threads; images in and out

  @Test
  void oneEngineServesEightThreadsAtOnce() throws Exception {
    Desk desk = desk(90, 200);
    Path recipe =
        desk.recipe(
            HEAD
                + """
                steps:
                  - { pop: a, mask: { polygon: "0,0 90,30 20,180", feather: 9 } }
                  - { adjust: [ { contrast: 0.2 } ] }
                deliverables: { print: print.tif }
                """);
    ExecutorService callers = Executors.newFixedThreadPool(8);
    try (Engine engine = Engine.builder().threads(2).keep(1 << 20).build()) {
      List<Future<byte[]>> made = new ArrayList<>();
      for (int i = 0; i < 16; i++) {
        Path out = folder.resolve("out-" + i);
        made.add(
            callers.submit(
                () -> {
                  try (Composite composite = engine.open(recipe)) {
                    return Pictures.bytes(
                        composite.deliver(out, Set.of(), Progress.SILENT).files().get(0).path());
                  }
                }));
      }
      byte[] first = made.get(0).get();
      for (Future<byte[]> other : made) {
        assertThat(other.get()).isEqualTo(first);
      }
    } finally {
      callers.shutdownNow();
    }
  }

  @Test
  void aFrameFromMemoryIsTheSameAsItsFile() {
    Desk desk = desk(50, 70);
    Path recipe = desk.recipe(HEAD + "steps: [ { pop: a, opacity: 0.7 } ]\n");
    short[] codes = new short[50 * 70 * 3];
    int i = 0;
    for (int c = 0; c < 3; c++) {
      for (int y = 0; y < 70; y++) {
        for (int x = 0; x < 50; x++) {
          codes[i++] = (short) desk.sample(1, x, y, c);
        }
      }
    }
    ArrayImg<UnsignedShortType, ShortArray> image = ArrayImgs.unsignedShorts(codes, 50, 70, 3);
    try (Engine engine = Engine.builder().build();
        Composite fromFile = engine.open(recipe);
        Composite fromMemory =
            engine.open(
                RecipeReader.read(recipe),
                folder,
                View.WHOLE,
                Map.of("a", MemoryFrame.of(image)))) {
      PictureBits.same(
          Pictures.planes(fromFile.image()), Pictures.planes(fromMemory.image()), "from memory");
    }
  }

  @Test
  void aPreviewIsMadeOfMeansOfLight() {
    Desk desk = desk(41, 30);
    Path recipe = desk.recipe(HEAD);
    try (Engine engine = Engine.builder().build();
        Composite whole = engine.open(recipe);
        Composite preview = engine.open(recipe, View.WHOLE.reducedBy(4))) {
      assertThat(preview.width()).isEqualTo(11);
      assertThat(preview.height()).isEqualTo(8);
      Planes full = Pictures.planes(whole.image());
      Planes small = Pictures.planes(preview.image());
      for (int y = 0; y < 8; y++) {
        for (int x = 0; x < 11; x++) {
          double sum = 0;
          int count = 0;
          for (int v = 4 * y; v < Math.min(30, 4 * y + 4); v++) {
            for (int u = 4 * x; u < Math.min(41, 4 * x + 4); u++) {
              sum += full.plane(1)[full.at(u, v)];
              count++;
            }
          }
          // The same sum in double; rounded once.
          assertThat(small.plane(1)[small.at(x, y)]).isEqualTo((float) (sum / count));
        }
      }
    }
  }

  @Test
  void viewsShowTheStepsTheyName() {
    Desk desk = desk(40, 30);
    Path recipe =
        desk.recipe(
            HEAD
                + """
                steps:
                  - { id: first, lay: a, opacity: 0.5 }
                  - id: pair
                    group:
                      - { lay: b, opacity: 0.5 }
                      - { adjust: [ { exposure: 1 } ] }
                """);
    try (Engine engine = Engine.builder().settings(PlanSettings.DEFAULT).build()) {
      Planes base = planes(engine, recipe, View.WHOLE.skipping("first").until("first"));
      Planes first = planes(engine, recipe, View.WHOLE.until("first"));
      Planes onlyFirst = planes(engine, recipe, View.WHOLE.only("first"));
      Planes onlyInner = planes(engine, recipe, View.WHOLE.only("pair/#2"));
      PictureBits.same(first, onlyFirst, "only the first");
      for (int i = 0; i < base.plane(0).length; i++) {
        assertThat(onlyInner.plane(0)[i]).isEqualTo(2 * base.plane(0)[i]);
      }
      assertThat(PictureBits.sha256(base)).isNotEqualTo(PictureBits.sha256(first));
      assertThatThrownBy(() -> engine.open(recipe, View.WHOLE.only("frist")))
          .isInstanceOf(DuskplyException.class)
          .hasMessageContaining("first");
    }
  }

  private static Planes planes(Engine engine, Path recipe, View view) {
    try (Composite composite = engine.open(recipe, view)) {
      return Pictures.planes(composite.image());
    }
  }
}
