package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Set;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.TiffFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Damaged frames and odd numbers in a whole rendering: refused, or gone on from aloud. */
class TolerantEngineTest {
  @TempDir private Path folder;

  private Path recipe(byte[] frame) {
    Desk desk = new Desk(folder, 64, 48);
    desk.write("base.tif", frame);
    return desk.recipe(
        """
        duskply: 1
        frames: { dusk: base.tif }
        base: dusk
        steps: []
        deliverables: { print: out.tif }
        """);
  }

  private Delivered render(Path recipe, boolean tolerant) {
    try (Engine engine = Engine.builder().threads(2).tolerant(tolerant).build();
        Composite composite = engine.open(recipe)) {
      return composite.deliver(folder, Set.of(), Progress.SILENT);
    }
  }

  @Test
  void aFrameThatIsCutShort() {
    Desk desk = new Desk(folder, 64, 48);
    byte[] frame = desk.file(3).strips(48).damage(b -> Arrays.copyOf(b, b.length * 6 / 10)).bytes();
    Path recipe = recipe(frame);
    assertThatThrownBy(() -> render(recipe, false))
        .isInstanceOf(DuskplyException.class)
        .hasMessageMatching(
            "base\\.tif is damaged: the rows from [0-9]+ down cannot be unpacked\\.");
    assertThat(Files.exists(folder.resolve("out.tif"))).isFalse();
    Delivered delivered = render(recipe, true);
    assertThat(delivered.notices())
        .singleElement()
        .asString()
        .matches(
            "dusk: Between its rows [0-9]+ and 47 some are missing or damaged; they are left grey,"
                + " or as they could be decoded\\.");
    assertThat(Files.exists(folder.resolve("out.tif"))).isTrue();
  }

  /** No number becomes 0 and infinity the largest half float: counted, and said. */
  @Test
  void numbersThatAreNone() {
    float[] odd = {Float.NaN, Float.POSITIVE_INFINITY, -1e9f, 0.5f};
    byte[] frame =
        new TiffFile(
                64, 48, 3, 32, (x, y, c) -> Float.floatToRawIntBits(y == 7 ? odd[x % 4] : 0.1f))
            .shorts(339, 3, 3, 3)
            .bytes();
    assertThat(render(recipe(frame), false).notices())
        .containsExactly(
            "dusk: 144 values were no number or beyond ±65504; no number became 0, the others were"
                + " held to that.");
  }

  @Test
  void soundFramesSayNothing() {
    byte[] frame = new Desk(folder, 64, 48).file(3).bytes();
    assertThat(render(recipe(frame), true).notices()).isEmpty();
  }
}
