package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import net.imglib2.img.array.ArrayImg;
import net.imglib2.img.array.ArrayImgs;
import net.imglib2.img.basictypeaccess.array.ShortArray;
import net.imglib2.type.numeric.integer.UnsignedShortType;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.PictureBits;
import org.duskply.engine.testing.Pictures;
import org.duskply.recipe.RecipeReader;
import org.junit.jupiter.api.Test;

/**
 * What programs do with an engine: many threads, frames from memory, previews, parts of a recipe.
 */
class FrontDoorTest extends ThreeFrames {
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
