package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import org.duskply.engine.testing.Desk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Law 8: no frame is opened, and no strip of it decoded, that no mask shows. */
class CostLawTest extends ThreeFrames {
  @Test
  void framesThatNothingShowsAreNotEvenOpened() {
    Desk desk = desk(40, 30);
    desk.write("frames/2.tif", "not a picture".getBytes(StandardCharsets.UTF_8));
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
      assertThat(base.unitsRead().cardinality()).isEqualTo(base.units());
      // The mask ends on the rows of a band of 64, and shows in 16 of them.
      assertThat(frame.name()).isEqualTo("a");
      assertThat(frame.unitsRead().stream()).containsExactly(2);
    }
  }

  /** What was told beforehand is what is done; rows that are kept cost no decoding again. */
  @Test
  void aDeliveryDecodesWhatWasTold() {
    Path recipe =
        desk(40, 320)
            .recipe(
                HEAD
                    + """
                    steps: [ { pop: a, mask: { polygon: "0,32 40,32 40,48 0,48" } } ]
                    deliverables: { print: print.tif }
                    """);
    try (Engine engine = Engine.builder().keep(1 << 20).build();
        Composite composite = engine.open(recipe)) {
      long told =
          composite.explain().frames().stream().mapToLong(f -> f.unitsRead().cardinality()).sum();
      assertThat(told).isEqualTo(320 / 16 + 1);
      assertThat(deliver(engine, recipe).unitsDecoded()).isEqualTo(told);
      assertThat(deliver(engine, recipe).unitsDecoded()).isZero();
    }
  }
}
