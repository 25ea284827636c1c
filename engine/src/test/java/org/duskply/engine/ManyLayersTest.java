package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import net.imglib2.FinalInterval;
import net.imglib2.type.numeric.integer.UnsignedShortType;
import net.imglib2.util.ConstantUtils;
import org.duskply.engine.testing.Desk;
import org.duskply.recipe.RecipeReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Memory grows with a band and what lives at once, not with frames times megapixels; long recipes
 * overflow no stack. Reported of several libraries at some 180 layers.
 */
class ManyLayersTest {
  private static final long MEGABYTE = 1 << 20;

  @TempDir Path folder;

  /** A recipe of {@code layers} frames, each popped in through a mask of its own. */
  private Path recipe(int layers, int width, int height) {
    StringBuilder text = new StringBuilder("duskply: 1\nbase: f0\nframes:\n");
    for (int i = 0; i <= layers; i++) {
      text.append("  f").append(i).append(": f").append(i).append(".tif\n");
    }
    text.append("steps:\n");
    for (int i = 1; i <= layers; i++) {
      int x = width * i / (layers + 1);
      text.append("  - { pop: f").append(i).append(", mask: { polygon: \"0,0 ");
      text.append(x).append(",0 ").append(width).append(',').append(height);
      text.append("\", feather: 40 } }\n");
    }
    return new Desk(folder, 1, 1).recipe(text + "deliverables: { print: print.tif }\n");
  }

  /** Frames that hold a value and no samples. */
  private static Map<String, MemoryFrame> frames(int layers, int width, int height) {
    Map<String, MemoryFrame> frames = new LinkedHashMap<>();
    for (int i = 0; i <= layers; i++) {
      frames.put(
          "f" + i,
          MemoryFrame.of(
              ConstantUtils.constantRandomAccessibleInterval(
                  new UnsignedShortType(300 * i), new FinalInterval(width, height, 3))));
    }
    return frames;
  }

  private Composite open(Engine engine, int layers, int width, int height) {
    return engine.open(
        RecipeReader.read(recipe(layers, width, height)),
        folder,
        View.WHOLE,
        frames(layers, width, height));
  }

  /** The fewest bytes with which the recipe can be rendered, as the refusal states them. */
  private long floor(int layers, int width, int height) {
    try (Engine engine = Engine.builder().threads(1).memory(1).build();
        Composite composite = open(engine, layers, width, height)) {
      return catchThrowableOfType(
              MemoryException.class,
              () -> composite.deliver(folder.resolve("out"), Set.of(), Progress.SILENT))
          .needed();
    }
  }

  @Test
  void aHundredFramesTakeHardlyMoreThanTen() {
    // 100 frames are 14.4 GB of samples. A leg of eight layers needs of each one unit of 64 rows ×
    // 6000 pixels × 3 samples × 2 bytes, 2.3 MB, and its mask for a band, 1.5 MB; beside them stand
    // the picture before and behind it, 4.6 MB each, and the outline of one feather: 45 MB.
    long hundred = floor(100, 6000, 4000);
    assertThat(hundred).isLessThan(45 * MEGABYTE);
    assertThat(hundred).isLessThan(2 * floor(10, 6000, 4000));
  }

  @Test
  void theFloorIsKeptWithAHundredLayers() {
    long floor = floor(100, 120, 200);
    try (Engine engine = Engine.builder().threads(2).memory(floor).build();
        Composite composite = open(engine, 100, 120, 200)) {
      Delivered made = composite.deliver(folder.resolve("out"), Set.of(), Progress.SILENT);
      assertThat(made.peakBytes()).isLessThanOrEqualTo(floor);
    }
    try (Engine engine = Engine.builder().threads(2).memory(floor - 1).build();
        Composite composite = open(engine, 100, 120, 200)) {
      assertThatThrownBy(() -> composite.deliver(folder.resolve("out"), Set.of(), Progress.SILENT))
          .isInstanceOf(MemoryException.class);
    }
  }

  @Test
  void aThousandStepsNeedNoDeepStack() throws Exception {
    // A quarter of a megabyte of stack, where a thread has one to eight by default.
    int steps = 1000;
    StringBuilder text =
        new StringBuilder("duskply: 1\nbase: f0\nframes: { f0: f0.tif }\nsteps:\n");
    for (int i = 0; i < steps; i++) {
      text.append(
          i % 2 == 0 ? "  - adjust: [ { exposure: 1 } ]\n" : "  - adjust: [ { exposure: -1 } ]\n");
    }
    Path recipe = new Desk(folder, 1, 1).recipe(text + "deliverables: { print: print.tif }\n");
    AtomicLong bytes = new AtomicLong();
    Throwable[] thrown = new Throwable[1];
    Thread small =
        new Thread(
            null,
            () -> {
              try (Engine engine = Engine.builder().threads(1).build();
                  Composite composite =
                      engine.open(
                          RecipeReader.read(recipe), folder, View.WHOLE, frames(0, 40, 30))) {
                composite.explain();
                bytes.set(
                    composite
                        .deliver(folder.resolve("out"), Set.of(), Progress.SILENT)
                        .files()
                        .get(0)
                        .bytes());
              } catch (RuntimeException | Error e) {
                thrown[0] = e;
              }
            },
            "small stack",
            256 << 10);
    small.start();
    small.join();
    assertThat(thrown[0]).isNull();
    assertThat(bytes.get()).isPositive();
  }

  @Test
  void aCancelledRenderingCanBeFollowedByAnother() {
    // Nothing of the first stays behind: the second has the whole budget, of exactly the floor.
    long floor = floor(10, 120, 900);
    try (Engine engine = Engine.builder().threads(2).memory(floor).build();
        Composite again = open(engine, 10, 120, 900)) {
      for (double share : new double[] {0.1, 0.5, 0.9}) {
        assertThatThrownBy(() -> again.deliver(folder.resolve("out"), Set.of(), new Until(share)))
            .isInstanceOf(CancelledException.class);
      }
      assertThat(again.deliver(folder.resolve("out"), Set.of(), Progress.SILENT).peakBytes())
          .isLessThanOrEqualTo(floor);
    }
  }

  /** Cancels once so much is done. */
  private static final class Until implements Progress {
    private final double most;
    private volatile double share;

    Until(double most) {
      this.most = most;
    }

    @Override
    public void reached(double newShare) {
      share = newShare;
    }

    @Override
    public boolean cancelled() {
      return share >= most;
    }
  }
}
