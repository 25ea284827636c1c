package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.function.ToIntFunction;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.render.Job;
import org.duskply.engine.render.Output;
import org.duskply.engine.render.Store;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.PictureBits;
import org.duskply.engine.testing.Pictures;
import org.duskply.recipe.RecipeException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An alternate is the picture of the recipe with its changes written in, and costs little more. */
class AlternatesTest {
  private static final int WIDTH = 90;
  private static final int HEIGHT = 150;
  private static final String FRAMES =
      """
      duskply: 1
      title: Café
      base: dusk
      frames: { dusk: 0.tif, a: 1.tif, b: 2.tif, ember: 3.tif }
      """;
  private static final String ALTERNATES =
      FRAMES
          + """
          steps:
            - { pop: a, mask: { polygon: "5,5 80,10 70,140", feather: 6 } }
            - { id: water, lay: b, opacity: 0.8 }
            - { lay: ember, blend: plus-lighter, opacity: 0.5 }
            - { id: grey, adjust: [ { saturation: 0 } ], skip: true }
            - id: pair
              group: [ { pop: a, opacity: 0.3 }, { adjust: [ { exposure: 1 } ] } ]
          finish: { steps: [ { adjust: [ { contrast: 0.2 } ] } ] }
          alternates:
            no-fire: { skip: [ember], set: { water: { opacity: 0.25 } } }
            plain: { show: [grey], set: { pair/#2: { adjust: [ { exposure: -1 } ] }, finish/#1: { skip: true } } }
          deliverables:
            print: print.tif
            web: { file: web-<alternate>.png, alternates: [main, no-fire] }
            grey: { file: "<title>-<alternate>.tif", alternates: [plain] }
          """;
  private static final String NO_FIRE =
      FRAMES
          + """
          steps:
            - { pop: a, mask: { polygon: "5,5 80,10 70,140", feather: 6 } }
            - { id: water, lay: b, opacity: 0.25 }
            - group: [ { pop: a, opacity: 0.3 }, { adjust: [ { exposure: 1 } ] } ]
            - { adjust: [ { contrast: 0.2 } ] }
          """;
  private static final String PLAIN =
      FRAMES
          + """
          steps:
            - { pop: a, mask: { polygon: "5,5 80,10 70,140", feather: 6 } }
            - { id: water, lay: b, opacity: 0.8 }
            - { lay: ember, blend: plus-lighter, opacity: 0.5 }
            - { adjust: [ { saturation: 0 } ] }
            - group: [ { pop: a, opacity: 0.3 }, { adjust: [ { exposure: -1 } ] } ]
          """;

  @TempDir Path folder;
  private Desk desk;

  @BeforeEach
  void frames() {
    desk = new Desk(folder, WIDTH, HEIGHT);
    for (int i = 0; i < 4; i++) {
      desk.frame(i + ".tif", i);
    }
  }

  private Planes picture(String recipe, View view) {
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(desk.recipe(recipe), view)) {
      return Pictures.planes(composite.image());
    }
  }

  @Test
  @Tag("bits")
  void isTheRecipeWithItsChangesWrittenIn() {
    PictureBits.same(
        picture(NO_FIRE, View.WHOLE), picture(ALTERNATES, View.WHOLE.alternate("no-fire")), "");
    PictureBits.same(
        picture(PLAIN, View.WHOLE), picture(ALTERNATES, View.WHOLE.alternate("plain")), "");
    PictureBits.same(
        picture(ALTERNATES, View.WHOLE), picture(ALTERNATES, View.WHOLE.alternate("main")), "");
  }

  @Test
  @Tag("bits")
  void allFilesOfOneRunHoldWhatEachAlternateShowsAlone() {
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(desk.recipe(ALTERNATES))) {
      Delivered together = composite.deliver(folder.resolve("out"), Set.of(), Progress.SILENT);
      assertThat(together.files())
          .extracting(f -> f.deliverable() + " " + f.alternate() + " " + f.path().getFileName())
          .containsExactly(
              "print main print.tif",
              "web main web-main.png",
              "web no-fire web-no-fire.png",
              "grey plain Café-plain.tif");
      for (String alternate : List.of("main", "no-fire", "plain")) {
        View view = View.WHOLE.alternate(alternate);
        Path alone = folder.resolve("alone");
        try (Composite one = engine.open(desk.recipe(ALTERNATES), view)) {
          for (Delivered.File file : one.deliver(alone, Set.of(), Progress.SILENT).files()) {
            assertThat(file.alternate()).isEqualTo(alternate);
            assertThat(alone.resolve(file.path().getFileName()))
                .hasSameBinaryContentAs(folder.resolve("out").resolve(file.path().getFileName()));
          }
        }
      }
    }
    assertThat(folder.resolve("alone")).isDirectoryContaining("glob:**web-no-fire.png");
  }

  @Test
  void framesAreDecodedOnceForAllAlternatesAndWhatTheyShareIsMadeOnce() {
    try (Engine engine = Engine.builder().build();
        PlannedComposite composite = (PlannedComposite) engine.open(desk.recipe(ALTERNATES))) {
      List<Delivery> deliveries = composite.deliveries(Set.of(), folder.resolve("out"));
      List<Output> outputs = deliveries.stream().map(Delivery::output).toList();
      Plan plan = composite.plan(outputs);
      assertThat(plan.frames()).hasSize(4);
      // Three pictures, a mask, and two pictures below: where no-fire parts, and where plain does.
      assertThat(plan.stages()).hasSize(6);
      try (Job job = new Job(plan, outputs, 64, Store.NONE)) {
        deliveries.forEach(Delivery::open);
        job.run(engine.pool(), 2, 1 << 30, share -> {}, () -> false);
        ToIntFunction<Integer> units = f -> plan.frames().get(f).source().units();
        for (int f = 0; f < 4; f++) {
          assertThat(job.counters().unitsDecoded(f)).isEqualTo(units.applyAsInt(f));
        }
        for (int s = 0; s < plan.stages().size(); s++) {
          assertThat(job.counters().bandsRun(s)).as("stage %d", s).isEqualTo(3);
        }
      }
      deliveries.forEach(Delivery::close);
    }
  }

  @Test
  void anAlternateThatIsNotThereIsNamedWithTheNearest() {
    Path recipe = desk.recipe(ALTERNATES);
    try (Engine engine = Engine.builder().build()) {
      assertThatThrownBy(() -> engine.open(recipe, View.WHOLE.alternate("no-fier")))
          .isInstanceOf(UnknownNameException.class)
          .hasMessage("The recipe has no alternate no-fier; did you mean no-fire?");
      assertThatThrownBy(() -> engine.open(recipe, View.WHOLE.alternate("x")))
          .hasMessage("The recipe has no alternate x; it has main, no-fire, plain.");
    }
  }

  @Test
  void aDeliverableThatTheAlternateIsNotMadeOfIsNotMade() {
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(desk.recipe(ALTERNATES), View.WHOLE.alternate("plain"))) {
      assertThatThrownBy(
              () -> composite.deliver(folder.resolve("out"), Set.of("web"), Progress.SILENT))
          .isInstanceOf(UnknownNameException.class)
          .hasMessageContaining("plain");
      assertThat(Files.exists(folder.resolve("out/web-main.png"))).isFalse();
    }
  }

  @Test
  void framesOfEveryAlternateAreLookedAt() {
    Path recipe =
        desk.recipe(
            FRAMES
                + """
                steps: [ { id: gone, lay: a, skip: true } ]
                alternates: { on: { show: [gone], set: { gone: { lay: b } } } }
                """);
    desk.write("2.tif", new byte[] {1});
    try (Engine engine = Engine.builder().build()) {
      RecipeException told = catchThrowableOfType(RecipeException.class, () -> engine.open(recipe));
      assertThat(told.problems())
          .filteredOn(problem -> !problem.isNotice())
          .singleElement()
          .matches(problem -> problem.path().equals("frames/b"));
      assertThat(engine.open(recipe, View.WHOLE.alternate("main")).width()).isEqualTo(WIDTH);
    }
  }

  @Test
  void stepsOfAViewAreCalledAsInTheRecipeAsItStands() {
    View view = View.WHOLE.alternate("no-fire").until("water");
    String until =
        FRAMES
            + """
            steps:
              - { pop: a, mask: { polygon: "5,5 80,10 70,140", feather: 6 } }
              - { lay: b, opacity: 0.25 }
            """;
    PictureBits.same(picture(until, View.WHOLE), picture(ALTERNATES, view), "until");
  }

  @Test
  void theFrameToCompareWithStandsBesideThePictureAsItIs() {
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(desk.recipe(ALTERNATES))) {
      Delivered before =
          composite.deliverBefore(folder.resolve("out"), Set.of("web"), Progress.SILENT);
      assertThat(before.files())
          .extracting(f -> f.path().getFileName().toString())
          .containsExactly("web-main-before.png");
    }
  }

  @Test
  void aStepThatIsLeftOutIsNotShownAloneInSilence() {
    String sentence = "Of the step grey alone nothing is seen but the base: it is left out.";
    assertThat(alone(View.WHOLE.only("grey"))).containsExactly("steps/#4 " + sentence);
    assertThat(alone(View.WHOLE.only("grey").alternate("plain"))).isEmpty();
    assertThat(alone(View.WHOLE.only("pair/#2"))).isEmpty();
  }

  private List<String> alone(View view) {
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(desk.recipe(ALTERNATES), view)) {
      return composite.notices().stream()
          .map(notice -> notice.path() + " " + notice.sentence())
          .filter(line -> line.contains(" alone "))
          .toList();
    }
  }

  /** A mask asks for a step by the name that it has in the recipe, whatever frame it is given. */
  @Test
  @Tag("bits")
  void aStepWithAnotherFrameIsStillFoundByMasks() {
    String steps =
        """
        steps:
          - { lay: a, mask: { polygon: "5,5 80,10 70,140" } }
          - { lay: b, mask: { polygon: "50,5 80,10 70,140" } }
          - { dodge: 1, mask: { steps: [a] } }
        """;
    String recipe = FRAMES + steps + "alternates: { swap: { set: { a: { lay: b } } } }\n";
    String written = FRAMES + steps.replace("lay: a", "id: a, lay: b");
    PictureBits.same(
        picture(written, View.WHOLE), picture(recipe, View.WHOLE.alternate("swap")), "swap");
  }

  @Test
  void isExplainedAsItIs() {
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(desk.recipe(ALTERNATES), View.WHOLE.alternate("plain"))) {
      Explanation told = composite.explain();
      assertThat(told.alternate()).isEqualTo("plain");
      assertThat(told.steps().get(3).done()).isTrue();
      assertThat(told.finish()).singleElement().matches(line -> !line.done());
      assertThat(told.finish().get(0).name()).isEqualTo("finish/#1");
    }
  }
}
