package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Set;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.Flat;
import org.duskply.engine.testing.Pictures;
import org.duskply.engine.testing.TiffFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Faults that were reported of other compositing software, end to end: mixing in the wrong space,
 * changing what should not be touched, losing levels on the way.
 */
class BlendingTruthTest {
  @TempDir Path folder;

  /**
   * Half the light of white is code 188 of 255 (IEC 61966-2-1: 255·(1.055·0.5^(1/2.4) − 0.055) =
   * 187.5…, rounded); mixing encoded values gives 128. Reported of several libraries.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "black | { lay: white, opacity: 0.5 }",
        "black | { pop: white, opacity: 0.5 }",
        "black | { lay: white, opacity: 0.5, blend: lighten }",
        "black | { lay: white, opacity: 0.5, blend: screen }",
        "black | { lay: white, opacity: 0.5, blend: plus-lighter }",
        "white | { lay: black, opacity: 0.5, blend: multiply }",
        "white | { lay: black, opacity: 0.5, blend: darken }",
        "black | { lay: white, mask: { polygon: \"0,0 8,0 8,8 0,8\", strength: 0.5 } }",
        "black | { group: [ { lay: white } ], opacity: 0.5 }",
        "white | { adjust: [ { exposure: -1 } ] }",
      })
  void halfTheLightOfWhiteIsCode188(String base, String step) {
    Flat desk = new Flat(folder, 8, 8).frame(base, (x, y, c) -> base.equals("white") ? 1 : 0);
    String other = base.equals("white") ? "black" : "white";
    desk.frame(other, (x, y, c) -> other.equals("white") ? 1 : 0);
    int[] codes = delivered(desk, "steps: [ " + step + " ]\n");
    assertThat(codes).containsOnly(188);
  }

  /** The codes of an 8-bit file without dither. */
  private int[] delivered(Flat desk, String steps) {
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite =
            desk.open(
                engine,
                steps + "deliverables: { web: { file: web.tif, depth: 8, dither: false } }\n",
                View.WHOLE)) {
      Path file =
          composite.deliver(folder.resolve("out"), Set.of(), Progress.SILENT).files().get(0).path();
      return Pictures.samples(file);
    }
  }

  @Test
  void anEdgeAndItsFeatherMixLight() {
    // The polygon's edge halves the pixels of column 4: half the light there.
    Flat desk =
        new Flat(folder, 40, 8).frame("black", (x, y, c) -> 0).frame("white", (x, y, c) -> 1);
    int[] hard =
        delivered(desk, "steps: [ { lay: white, mask: { polygon: \"0,0 4.5,0 4.5,8 0,8\" } } ]\n");
    assertThat(hard[3 * 3]).isEqualTo(255);
    assertThat(hard[4 * 3]).isEqualTo(188);
    assertThat(hard[5 * 3]).isEqualTo(0);
    // A feathered edge at 20: what one side gives, the other lacks, in light and not in codes.
    Planes soft =
        desk.picture(
            "steps: [ { lay: white, mask: { polygon: \"-40,-40 20,-40 20,48 -40,48\", feather: 6 } } ]\n");
    for (int i = 0; i < 19; i++) {
      float inside = soft.plane(0)[soft.at(19 - i, 4)];
      float outside = soft.plane(0)[soft.at(20 + i, 4)];
      assertThat(inside + outside).isBetween(1 - 4e-6f, 1 + 4e-6f);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"0.01", "1", "20", "300", "2000"})
  void aFeatheredMaskThatRunsOverTheBorderIsFullThere(String feather) {
    Flat desk =
        new Flat(folder, 40, 30).frame("black", (x, y, c) -> 0).frame("white", (x, y, c) -> 1);
    Planes made =
        desk.picture(
            "steps: [ { lay: white, mask: { polygon: \"-9000,-9000 9000,-9000 9000,9000 -9000,9000\","
                + " feather: "
                + feather
                + " } } ]\n");
    assertThat(made.plane(0)).containsOnly(1f);
  }

  @ParameterizedTest
  @ValueSource(ints = {8, 16})
  void whatIsNotTouchedKeepsEveryCode(int depth) {
    // All codes of all channels below a mask of 0, an opacity of 0 and frames that change nothing.
    int levels = depth == 8 ? 256 : 65536;
    int side = depth == 8 ? 16 : 256;
    Desk desk = new Desk(folder, side, side);
    TiffFile file =
        new TiffFile(side, side, 3, depth, (x, y, c) -> (y * side + x + c * levels / 3) % levels);
    Path frame = desk.write("f.tif", file.bytes());
    desk.write("black.tif", new TiffFile(side, side, 3, depth, (x, y, c) -> 0).bytes());
    Path recipe =
        desk.recipe(
            """
            duskply: 1
            base: f
            frames: { f: f.tif, black: black.tif }
            steps:
              - { lay: black, mask: { polygon: "-50,-50 -40,-50 -40,-40" } }
              - { lay: black, opacity: 0 }
              - { pop: black }
              - { lay: black, blend: plus-lighter, opacity: 0.3 }
              - { lay: f }
            deliverables: { print: { file: print.tif, depth: %d } }
            """
                .formatted(depth));
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = engine.open(recipe)) {
      composite.deliver(folder.resolve("out"), Set.of(), Progress.SILENT);
      assertThat(Pictures.samples(folder.resolve("out/print.tif")))
          .isEqualTo(Pictures.samples(frame));
    }
  }

  @Test
  void twentyNeutralLayersLoseNoLevel() {
    // A sky: 65,536 values of light between 0.02 and 0.05, each its own.
    Flat desk = new Flat(folder, 256, 256).frame("sky", BlendingTruthTest::sky);
    StringBuilder steps = new StringBuilder("steps:\n");
    for (int i = 0; i < 20; i++) {
      steps.append(
          i % 2 == 0
              ? "  - { lay: sky, opacity: 0.37 }\n"
              : "  - { pop: sky, mask: { polygon: \"0,0 256,0 256,200 0,256\", feather: 30 } }\n");
    }
    float[] made = desk.picture(steps.toString()).plane(0);
    assertThat(distinct(made)).isEqualTo(65536);
    for (int i = 0; i < made.length; i++) {
      assertThat(made[i]).isEqualTo(sky(i % 256, i / 256, 0));
    }
  }

  @Test
  void sixStopsDownAndUpAgainBandNothing() {
    Flat desk = new Flat(folder, 256, 256).frame("sky", BlendingTruthTest::sky);
    float[] there =
        desk.picture("steps: [ { adjust: [ { exposure: -6 }, { exposure: 6 } ] } ]\n").plane(1);
    float[] odd =
        desk.picture(
                "steps:\n  - adjust: [ { exposure: -5.7 } ]\n  - adjust: [ { exposure: 5.7 } ]\n")
            .plane(1);
    for (int i = 0; i < there.length; i++) {
      float wanted = sky(i % 256, i / 256, 1);
      assertThat(there[i]).isEqualTo(wanted);
      // Two factors and two products, each rounded to 2⁻²⁴ of itself.
      assertThat(Math.abs(odd[i] - wanted)).isLessThanOrEqualTo(4 * 0x1p-24f * wanted);
    }
    assertThat(distinct(odd)).isGreaterThan(65536 - 65536 / 100);
  }

  private static float sky(int x, int y, int c) {
    return 0.02f + 0.03f * (256 * y + x) / 65536;
  }

  private static long distinct(float[] values) {
    float[] sorted = values.clone();
    Arrays.sort(sorted);
    long count = 1;
    for (int i = 1; i < sorted.length; i++) {
      count += sorted[i] == sorted[i - 1] ? 0 : 1;
    }
    return count;
  }
}
