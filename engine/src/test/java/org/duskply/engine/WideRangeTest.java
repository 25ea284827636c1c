package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.duskply.engine.frame.Corpus;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.Flat;
import org.duskply.engine.testing.Pictures;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.step.Blend;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Light above white and below black survives every operation: nothing clips in the middle, and
 * nothing turns into what is no number. Reported of other software for blurs and blend modes.
 */
class WideRangeTest {
  private static final float BRIGHT = 4;

  /** Adjustments whose purpose it is to bring light above white down to white. */
  private static final Set<String> ROLLS_OFF = Set.of("shoulder");

  @TempDir Path folder;

  private Flat even(float base, float frame) {
    return new Flat(folder, 12, 9).frame("dusk", (x, y, c) -> base).frame("f", (x, y, c) -> frame);
  }

  /** Every kind of adjustment, as the example in its own description. */
  @TestFactory
  Stream<DynamicTest> adjustments() {
    return Stream.of(Adjustment.class.getPermittedSubclasses())
        .map(kind -> (Shape<?>) Shape.of(kind))
        .map(
            shape ->
                DynamicTest.dynamicTest(
                    shape.key(),
                    () -> {
                      String list = "steps: [ { adjust: [ { " + shape.example() + " } ] } ]\n";
                      for (float light : new float[] {BRIGHT, 65504, -0.25f, 0, 1e-30f}) {
                        Planes made = even(light, 0).picture(list);
                        for (int p = 0; p < 3; p++) {
                          float v = made.plane(p)[0];
                          assertThat(v).as("%s of %s", list, light).isFinite();
                          if (light == BRIGHT && !ROLLS_OFF.contains(shape.key())) {
                            assertThat(v).as("%s of %s", list, light).isGreaterThan(1f);
                          }
                        }
                      }
                    }));
  }

  /** Every blend mode on every pair of bright, ordinary, black and negative light. */
  @TestFactory
  Stream<DynamicTest> blendModes() {
    List<DynamicTest> tests = new ArrayList<>();
    float[] lights = {BRIGHT, 1, 0.5f, 0, -0.25f, 65504};
    for (Blend mode : Blend.values()) {
      tests.add(
          DynamicTest.dynamicTest(
              mode.key(),
              () -> {
                for (float base : lights) {
                  for (float frame : lights) {
                    Planes made =
                        even(base, frame)
                            .picture("steps: [ { lay: f, blend: " + mode.key() + " } ]\n");
                    assertThat(made.plane(0)[0]).as("%s on %s", frame, base).isFinite();
                  }
                }
              }));
    }
    return tests.stream();
  }

  /** The modes that take any light as it is. */
  @ParameterizedTest
  @CsvSource({
    "normal, 4, 0.5, 0.5",
    "normal, 0.5, 4, 4",
    "lighten, 4, 0.5, 4",
    "lighten, -0.25, -0.5, -0.25",
    "darken, 4, 3, 3",
    "darken, 0.5, -0.25, -0.25",
    "multiply, 4, 0.5, 2",
    "multiply, 4, 4, 16",
    "multiply, -0.25, 2, -0.5",
    "plus-lighter, 4, 0.5, 4.5",
    "plus-lighter, -0.25, 0.5, 0.25"
  })
  void modesOfLightTakeAnyLight(String mode, float base, float frame, float wanted) {
    Planes made = even(base, frame).picture("steps: [ { lay: f, blend: " + mode + " } ]\n");
    assertThat(made.plane(1)[5]).isEqualTo(wanted);
  }

  @Test
  void masksGroupsPreviewsAndPopsKeepBrightLight() {
    Flat desk = even(BRIGHT, 0.5f);
    String mask = "mask: { polygon: \"-20,-20 30,-20 30,30 -20,30\", feather: 9 }";
    for (String step :
        List.of(
            "{ pop: f }",
            "{ pop: f, " + mask + " }",
            "{ lay: f, opacity: 0 }",
            "{ group: [ { pop: f } ], opacity: 0.7 }",
            "{ group: [ { lay: dusk, opacity: 0.3 } ], " + mask + " }")) {
      for (int reduction : new int[] {1, 2, 5}) {
        Planes made = desk.picture("steps: [ " + step + " ]\n", View.WHOLE.reducedBy(reduction));
        assertThat(made.plane(2)).as("%s at 1/%s", step, reduction).containsOnly(BRIGHT);
      }
    }
  }

  @Test
  void aLampComesBackFromBeingDarkened() {
    Flat desk =
        new Flat(folder, 40, 30).frame("dusk", (x, y, c) -> x == 20 && y == 15 ? 50 : 0.01f);
    Planes made =
        desk.picture(
            """
            steps:
              - adjust: [ { exposure: -2 } ]
              - { lay: dusk, opacity: 0 }
              - adjust: [ { exposure: 2 } ]
            """);
    assertThat(made.plane(0)[made.at(20, 15)]).isEqualTo(50f);
    assertThat(made.plane(0)[0]).isEqualTo(0.01f);
  }

  /** A measured interior (CC0) whose window is 18.8 times white. */
  @Test
  void aWindowOfTheCorpusIsStillThereFourStopsDown() {
    Path truth = Corpus.file("scenes/derived_bracket/apartment_truth_linear_f32.tif");
    Desk desk = new Desk(folder, 1, 1);
    desk.write("truth.tif", Pictures.bytes(truth));
    Path recipe =
        desk.recipe(
            """
            duskply: 1
            base: truth
            frames: { truth: truth.tif, same: truth.tif }
            steps:
              - pop: same
              - adjust: [ { exposure: -4 } ]
            """);
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = engine.open(recipe)) {
      Planes made = Pictures.planes(composite.image());
      float brightest = 0;
      for (int p = 0; p < 3; p++) {
        for (float v : made.plane(p)) {
          brightest = Math.max(brightest, v);
        }
      }
      assertThat(16 * brightest).isGreaterThan(18f);
      // The corpus states this pixel to six decimals.
      int at = made.at(100, 50);
      assertThat(16.0 * made.plane(0)[at]).isCloseTo(0.508185, within(1e-6));
      assertThat(16.0 * made.plane(1)[at]).isCloseTo(0.386940, within(1e-6));
      assertThat(16.0 * made.plane(2)[at]).isCloseTo(0.282631, within(1e-6));
    }
  }
}
