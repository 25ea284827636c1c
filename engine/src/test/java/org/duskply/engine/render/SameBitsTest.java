package org.duskply.engine.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.testing.Collected;
import org.duskply.engine.testing.PictureBits;
import org.duskply.engine.testing.RandomGraph;
import org.duskply.engine.testing.RandomSteps;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** No way of cutting up the work changes a bit of the picture. */
@Tag("bits")
class SameBitsTest {
  private static final int WIDTH = 53;
  private static final int HEIGHT = 41;
  private static final int GRAPHS = 32;

  private static final Map<Integer, Node> PICTURES = new ConcurrentHashMap<>();

  private static Node picture(int seed) {
    return PICTURES.computeIfAbsent(seed, SameBitsTest::newPicture);
  }

  /** By turns the planner's own shapes, and what recipes are made of. */
  private static Node newPicture(int seed) {
    return seed % 2 == 0
        ? new RandomGraph(seed, WIDTH, HEIGHT).picture(6)
        : new RandomSteps(seed, WIDTH, HEIGHT).picture(6);
  }

  private static final Region CANVAS = Region.ofSize(WIDTH, HEIGHT);

  /** Every node finished on its own over the whole canvas, without runs, footprints or fusion. */
  private static Planes plainly(Node picture) {
    return evaluate(picture, CANVAS, new PlanSettings(64, 4096, false));
  }

  private static Planes evaluate(Node picture, Region region, PlanSettings settings) {
    Plan plan = Plan.of(List.of(picture), settings);
    try (RegionEvaluator evaluator = new RegionEvaluator(plan, 1 << 20)) {
      return evaluator.compute(picture, region, Stop.NEVER);
    }
  }

  private static Planes render(
      Node picture, PlanSettings settings, int threads, Store store, boolean tight) {
    Plan plan = Plan.of(List.of(picture), settings);
    Collected sink = new Collected(CANVAS);
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try (Job job =
        new Job(plan, List.of(new Output(picture, CANVAS, sink)), settings.bandRows(), store)) {
      long budget = tight ? job.floorBytes() : 1L << 30;
      long peak = job.run(pool, threads, budget, share -> {}, Stop.NEVER);
      assertThat(peak).isLessThanOrEqualTo(budget);
      return sink.picture();
    } finally {
      pool.shutdown();
    }
  }

  @Test
  void fusedIsUnfused() {
    for (int seed = 0; seed < GRAPHS; seed++) {
      Node picture = picture(seed);
      Planes plain = plainly(picture);
      for (int chunk : new int[] {1, 7, 16, 512}) {
        PictureBits.same(
            plain,
            evaluate(
                picture, CANVAS, new PlanSettings(64, chunk, true).withLegLeaves(1 + chunk / 4)),
            "seed " + seed + ", chunks of " + chunk);
      }
    }
  }

  @Test
  void anyRectangleIsThatPartOfTheWhole() {
    for (int seed = 0; seed < GRAPHS; seed++) {
      Node picture = picture(seed);
      Planes plain = plainly(picture);
      Random random = new Random(seed);
      for (int i = 0; i < 5; i++) {
        int left = random.nextInt(WIDTH);
        int top = random.nextInt(HEIGHT);
        Region part =
            new Region(
                left,
                top,
                left + 1 + random.nextInt(WIDTH - left),
                top + 1 + random.nextInt(HEIGHT - top));
        PictureBits.same(
            plain, evaluate(picture, part, PlanSettings.DEFAULT), "seed " + seed + " " + part);
      }
    }
  }

  @Test
  void bandsThreadsAndBudgetsDoNotMatter() {
    for (int seed = 0; seed < GRAPHS; seed++) {
      Node picture = picture(seed);
      Planes plain = plainly(picture);
      for (int bandRows : new int[] {1, 5, 16, 64}) {
        for (int threads : new int[] {1, 3}) {
          for (boolean tight : new boolean[] {true, false}) {
            PlanSettings settings =
                new PlanSettings(bandRows, 19, true).withLegLeaves(1 + seed % 4);
            Planes rendered = render(picture, settings, threads, Store.NONE, tight);
            PictureBits.same(
                plain,
                rendered,
                "seed "
                    + seed
                    + ", bands of "
                    + bandRows
                    + ", "
                    + threads
                    + " threads, tight "
                    + tight);
          }
        }
      }
    }
  }

  @Test
  void unfusedBandsAreTheSameToo() {
    for (int seed = 0; seed < GRAPHS; seed++) {
      Node picture = picture(seed);
      PictureBits.same(
          plainly(picture),
          render(picture, new PlanSettings(8, 11, false), 2, Store.NONE, true),
          "seed " + seed);
    }
  }

  @Test
  void aStoreDoesNotMatterAndSavesTheWork() {
    for (int seed = 0; seed < GRAPHS; seed++) {
      Node picture = picture(seed);
      Planes plain = plainly(picture);
      for (long limit : new long[] {3_000, 1 << 24}) {
        Store store = new BoundedStore(limit);
        PlanSettings settings = new PlanSettings(8, 512, true).withLegLeaves(2);
        PictureBits.same(plain, render(picture, settings, 2, store, false), "first, seed " + seed);
        // The same graph built anew has the same keys; nothing is decoded a second time where all
        // was kept.
        Node again = newPicture(seed);
        PictureBits.same(plain, render(again, settings, 2, store, false), "again, seed " + seed);
        if (limit > 1 << 20) {
          Plan plan = Plan.of(List.of(again), settings);
          Output output = new Output(again, CANVAS, new Collected(CANVAS));
          try (Job job = new Job(plan, List.of(output), 8, store)) {
            for (int f = 0; f < plan.frames().size(); f++) {
              assertThat(job.unitsNeeded(f).size()).isZero();
            }
          }
        }
      }
    }
  }

  @Test
  void anyScheduleGivesTheSameBits() {
    for (int seed = 0; seed < GRAPHS; seed++) {
      Node picture = picture(seed);
      Planes plain = plainly(picture);
      Plan plan = Plan.of(List.of(picture), new PlanSettings(6, 16, true).withLegLeaves(3));
      for (int schedule = 0; schedule < 4; schedule++) {
        Collected sink = new Collected(CANVAS);
        try (Job job = new Job(plan, List.of(new Output(picture, CANVAS, sink)), 6, Store.NONE)) {
          runInAnyOrder(job.graph(), new Random(schedule));
        }
        PictureBits.same(plain, sink.picture(), "seed " + seed + ", schedule " + schedule);
      }
    }
  }

  /** One thread that picks any task that may start. */
  private static void runInAnyOrder(TaskGraph graph, Random random) {
    long budget = graph.floorBytes() * (10 + random.nextInt(10)) / 10;
    Schedule schedule = new Schedule(graph, budget);
    while (!schedule.finished()) {
      List<Integer> startable = new ArrayList<>();
      for (int i = 0; i < graph.size(); i++) {
        if (schedule.mayStart(i)) {
          startable.add(i);
        }
      }
      int i = startable.get(random.nextInt(startable.size()));
      schedule.start(i);
      graph.task(i).run();
      schedule.finish(i);
      assertThat(schedule.used()).isLessThanOrEqualTo(budget);
    }
  }

  @Test
  void severalOutputsShareOnePass() {
    Node picture = picture(4);
    Planes plain = plainly(picture);
    Plan plan = Plan.of(List.of(picture), PlanSettings.DEFAULT);
    Collected a = new Collected(CANVAS);
    Collected b = new Collected(CANVAS);
    ExecutorService pool = Executors.newFixedThreadPool(2);
    try (Job job =
        new Job(
            plan,
            List.of(new Output(picture, CANVAS, a), new Output(picture, CANVAS, b)),
            8,
            Store.NONE)) {
      job.run(pool, 2, job.floorBytes(), share -> {}, Stop.NEVER);
      int stage = plan.stageOf(picture);
      assertThat(job.counters().bandsRun(stage)).isEqualTo((HEIGHT + 7) / 8);
      for (int f = 0; f < plan.frames().size(); f++) {
        assertThat(job.counters().unitsDecoded(f)).isEqualTo(job.unitsNeeded(f).size());
      }
    } finally {
      pool.shutdown();
    }
    PictureBits.same(plain, a.picture(), "first output");
    PictureBits.same(plain, b.picture(), "second output");
  }
}
