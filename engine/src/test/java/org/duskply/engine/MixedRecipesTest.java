package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.render.BoundedStore;
import org.duskply.engine.render.Job;
import org.duskply.engine.render.Output;
import org.duskply.engine.render.RegionEvaluator;
import org.duskply.engine.render.Store;
import org.duskply.engine.testing.Collected;
import org.duskply.engine.testing.Flat;
import org.duskply.engine.testing.PictureBits;
import org.duskply.engine.testing.RandomRecipe;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Recipes of everything at once, by seeds: no way of cutting up the work, and no alternate made
 * beside it, changes a bit, at any scale of a preview; and no light that a frame may hold, whatever
 * is done to it, ends as what is no finite number.
 */
class MixedRecipesTest {
  private static final int WIDTH = 47;
  private static final int HEIGHT = 38;
  private static final int RECIPES = 12;

  /** What a frame may hold at the ends, and what lies about thresholds. */
  private static final float[] EDGES = {
    65504, -65504, 0, -0f, Float.MIN_VALUE, -Float.MIN_VALUE, 0x1p-10f, 0.5f, 1, -0.1f, 3
  };

  @TempDir Path folder;

  private Flat frames(long seed) {
    Flat flat = new Flat(folder, WIDTH, HEIGHT);
    for (int f = 0; f < 4; f++) {
      Random random = new Random(seed * 10 + f);
      Flat.Light light =
          (x, y, c) ->
              c == 3
                  ? random.nextInt(3) / 2f
                  : random.nextInt(6) == 0
                      ? EDGES[random.nextInt(EDGES.length)]
                      : random.nextFloat() * (1 + y % 2);
      flat =
          f == 2
              ? flat.covered("b", light)
              : flat.frame(f == 0 ? "dusk" : f == 1 ? "a" : "c", light);
    }
    return flat;
  }

  private static Planes evaluated(Node picture, Region region, PlanSettings settings) {
    Plan plan = Plan.of(List.of(picture), settings);
    try (RegionEvaluator evaluator = new RegionEvaluator(plan, 1 << 20)) {
      return evaluator.compute(picture, region, Stop.NEVER);
    }
  }

  /** All pictures in one pass, in no more memory than that takes. */
  private static List<Planes> rendered(
      List<Node> pictures, Region canvas, PlanSettings settings, int threads, Store store) {
    List<Collected> sinks = pictures.stream().map(p -> new Collected(canvas)).toList();
    List<Output> outputs = new ArrayList<>();
    for (int i = 0; i < pictures.size(); i++) {
      outputs.add(new Output(pictures.get(i), canvas, sinks.get(i)));
    }
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try (Job job = new Job(Plan.of(pictures, settings), outputs, settings.bandRows(), store)) {
      long floor = job.floorBytes();
      assertThat(job.run(pool, threads, floor, share -> {}, Stop.NEVER)).isLessThanOrEqualTo(floor);
    } finally {
      pool.shutdown();
    }
    return sinks.stream().map(Collected::picture).toList();
  }

  @Test
  @Tag("bits")
  void noCutOfTheWorkChangesABit() {
    for (int seed = 0; seed < RECIPES; seed++) {
      String text = new RandomRecipe(seed, WIDTH, HEIGHT, false).text(6);
      View view = View.WHOLE.reducedBy(new int[] {1, 1, 2, 3, 7}[seed % 5]);
      try (Engine engine = Engine.builder().threads(1).build();
          PlannedComposite composite = (PlannedComposite) frames(seed).open(engine, text, view)) {
        check(composite, "seed " + seed + ": " + text, seed);
      }
    }
  }

  private static void check(PlannedComposite composite, String what, int seed) {
    Region canvas = Region.ofSize(composite.width(), composite.height());
    List<Node> pictures = composite.versions().values().stream().map(Version::picture).toList();
    assertThat(pictures).hasSize(3);
    List<Planes> plain =
        pictures.stream()
            .map(p -> evaluated(p, canvas, new PlanSettings(64, 4096, false)))
            .toList();
    Store store = new BoundedStore(1 << 24);
    for (int bandRows : new int[] {1, 5, 64}) {
      PlanSettings settings = new PlanSettings(bandRows, 9, true).withLegLeaves(1 + seed % 3);
      for (Store kept : List.of(Store.NONE, store, store)) {
        List<Planes> rendered = rendered(pictures, canvas, settings, 2, kept);
        for (int i = 0; i < pictures.size(); i++) {
          PictureBits.same(plain.get(i), rendered.get(i), bandRows + " rows, " + i + ", " + what);
        }
      }
    }
    Random random = new Random(seed);
    for (int i = 0; i < 4; i++) {
      int left = random.nextInt(canvas.width());
      int top = random.nextInt(canvas.height());
      Region part =
          new Region(left, top, left + 1 + random.nextInt(9), top + 1 + random.nextInt(9));
      PictureBits.same(
          plain.get(0),
          evaluated(pictures.get(0), part.meet(canvas), PlanSettings.DEFAULT),
          part + ", " + what);
    }
  }

  @Test
  void allThatComesOutIsFinite() {
    List<String> spaces = List.of("srgb", "display-p3", "a98-rgb", "prophoto-rgb", "rec2020");
    for (int seed = 100; seed < 100 + 2 * RECIPES; seed++) {
      String text =
          "working: "
              + spaces.get(seed % 5)
              + "\n"
              + new RandomRecipe(seed, WIDTH, HEIGHT, true).text(10);
      Planes picture = frames(seed).picture(text);
      for (int p = 0; p < 3; p++) {
        for (float v : picture.plane(p)) {
          assertThat(v).as("seed %s: %s", seed, text).isFinite();
        }
      }
    }
  }
}
