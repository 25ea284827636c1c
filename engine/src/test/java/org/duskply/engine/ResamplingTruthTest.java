package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Set;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.testing.Flat;
import org.duskply.engine.testing.PictureBits;
import org.duskply.engine.testing.Pictures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Faults of resizing that were reported of other software, end to end. */
class ResamplingTruthTest {
  @TempDir Path folder;

  private int[] delivered(Flat desk, String rest, int edge) {
    String deliverables =
        "deliverables: { web: { file: web.tif, depth: 8, dither: false, long-edge: "
            + edge
            + " } }\n";
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = desk.open(engine, rest + deliverables, View.WHOLE)) {
      Path file =
          composite.deliver(folder.resolve("out"), Set.of(), Progress.SILENT).files().get(0).path();
      return Pictures.samples(file);
    }
  }

  /**
   * A checker of single pixels is half black, half white: half the light, code 188 (IEC 61966-2-1).
   * Averaging codes gives 128. Resized by what writes files and by what makes previews.
   */
  @Test
  void aCheckerOfSinglePixelsIsHalfTheLight() {
    Flat desk = new Flat(folder, 64, 64).frame("checker", (x, y, c) -> (x + y) & 1);
    int[] codes = delivered(desk, "", 32);
    for (int y = 4; y < 28; y++) {
      for (int x = 4; x < 28; x++) {
        assertThat(codes[3 * (32 * y + x)]).isEqualTo(188);
      }
    }
    for (float v : desk.picture("", View.WHOLE.reducedBy(2)).plane(1)) {
      assertThat(v).isEqualTo(0.5f);
    }
  }

  /**
   * A white disc, transparent around, over white is white; what colour its empty part has must not
   * matter. Straight-alpha resizing gives it a dark or a magenta rim.
   */
  @ParameterizedTest
  @ValueSource(ints = {2, 3, 7})
  void colourWithoutCoverageHasNoInfluence(int reduction) {
    Flat.Light white = (x, y, c) -> 1;
    Planes empty =
        new Flat(folder, 100, 80)
            .frame("white", white)
            .covered("disc", (x, y, c) -> c == 3 ? disc(x, y) : disc(x, y) > 0 ? 1 : 0)
            .picture("steps: [ { lay: disc } ]\n", View.WHOLE.reducedBy(reduction));
    for (int p = 0; p < 3; p++) {
      for (float v : empty.plane(p)) {
        assertThat(v).isEqualTo(1f);
      }
    }
    Planes magenta =
        new Flat(folder, 100, 80)
            .frame("white", white)
            .covered("disc", (x, y, c) -> c == 3 ? disc(x, y) : c == 1 && disc(x, y) == 0 ? 0 : 1)
            .picture("steps: [ { lay: disc } ]\n", View.WHOLE.reducedBy(reduction));
    PictureBits.same(empty, magenta, "magenta under alpha 0");
  }

  @ParameterizedTest
  @ValueSource(ints = {37, 99})
  void aDiscOverWhiteIsWhiteInTheFile(int edge) {
    Flat desk =
        new Flat(folder, 100, 80)
            .frame("white", (x, y, c) -> 1)
            .covered("disc", (x, y, c) -> c == 3 ? disc(x, y) : disc(x, y) > 0 ? 1 : 0);
    assertThat(delivered(desk, "steps: [ { lay: disc } ]\n", edge)).containsOnly(255);
  }

  /** Coverage: 1 inside, 0 outside, 0.5 on the rim. */
  private static float disc(int x, int y) {
    int square = (x - 50) * (x - 50) + (y - 40) * (y - 40);
    return square < 900 ? 1 : square < 960 ? 0.5f : 0;
  }

  /**
   * A lamp five hundred times brighter than the wall leaves no black ring when the file is made.
   */
  @ParameterizedTest
  @ValueSource(ints = {30, 45, 90})
  void aLampLeavesNoBlackRing(int edge) {
    Flat desk =
        new Flat(folder, 100, 100).frame("wall", (x, y, c) -> x == 50 && y == 50 ? 50 : 0.1f);
    int wall = 89; // 255·(1.055·0.1^(1/2.4) − 0.055) = 89.0
    int[] codes = delivered(desk, "", edge);
    int brightest = 0;
    for (int code : codes) {
      assertThat(code).isGreaterThan(0);
      brightest = Math.max(brightest, code);
    }
    assertThat(brightest).isGreaterThan(wall);
    assertThat(codes[0]).isEqualTo(wall);
  }
}
