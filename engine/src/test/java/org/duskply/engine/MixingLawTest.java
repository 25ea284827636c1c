package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.duskply.engine.colour.IccWriter;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.Pictures;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Law 1: weight 0 keeps the picture below to the bit, weight 1 is the step, and light is mixed as
 * light.
 */
class MixingLawTest extends ThreeFrames {
  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void aRecipeWithoutStepsReturnsEveryCode(NamedSpace space) {
    // 65,536 greys, then random triples; a profile's own codes in, the same codes out.
    Random random = new Random(5);
    int[] triples = random.ints(3 * 65536, 0, 65536).toArray();
    byte[] profile = IccWriter.profile(space);
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
}
