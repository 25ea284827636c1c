package org.duskply.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.LongAdder;
import java.util.function.IntFunction;
import org.duskply.engine.frame.FrameSource.Access;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.render.BoundedStore;
import org.duskply.engine.render.Job;
import org.duskply.engine.render.Output;
import org.duskply.engine.render.Store;
import org.duskply.engine.testing.Collected;
import org.duskply.engine.testing.NoiseFrame;
import org.junit.jupiter.api.Test;

/** Where a long run of steps is cut. */
class LegsTest {
  private static final int BAND = 16;
  private static final Region CANVAS = Region.ofSize(60, 256);
  private static final PlanSettings TEN = new PlanSettings(BAND, 32, true).withLegLeaves(10);

  private static int seed;

  private static Node frame() {
    int rows = BAND;
    return new NoiseFrame(seed++, CANVAS.width(), CANVAS.height(), rows, Access.RANDOM).node(0);
  }

  /** Lays so many frames on a picture, one after the other. */
  private static Node laid(Node below, int frames) {
    Node picture = below;
    for (int i = 0; i < frames; i++) {
      picture = new Mix(picture, frame(), null, null, 0.5f);
    }
    return picture;
  }

  /** A mask of a picture in a box. */
  private static Node shown(Node picture, Region box) {
    return new InBox(picture, box, new LongAdder());
  }

  /** How many frames each stage reads, for its pictures as they are finished. */
  private static List<Integer> framesRead(Node picture, PlanSettings settings) {
    List<Integer> read = new ArrayList<>();
    for (Stage stage : Plan.of(List.of(picture), settings).stages()) {
      List<Integer> frames = new ArrayList<>();
      stage.needs(
          CANVAS,
          new StageNeeds() {
            @Override
            public void frame(int frame, Region part) {
              frames.add(frame);
            }

            @Override
            public void stage(int stage, Region part) {}
          });
      read.add(frames.size());
    }
    return read;
  }

  private static long floorBytes(Node picture, PlanSettings settings) {
    Plan plan = Plan.of(List.of(picture), settings);
    Output output = new Output(picture, CANVAS, new Collected(CANVAS));
    try (Job job = new Job(plan, List.of(output), BAND, Store.NONE)) {
      return job.floorBytes();
    }
  }

  @Test
  void whatFitsIntoOneLegIsNotCut() {
    assertThat(framesRead(laid(frame(), 9), TEN)).containsExactly(10);
  }

  @Test
  void aLegReadsNoMoreThanItMay() {
    assertThat(framesRead(laid(frame(), 10), TEN)).containsExactly(10, 1);
    assertThat(framesRead(laid(frame(), 34), TEN)).containsExactly(10, 10, 10, 5);
  }

  @Test
  void masksCountLikeFramesAndWhatOnlyTheyReadDoesNot() {
    Node picture = frame();
    for (int i = 0; i < 9; i++) {
      picture = new Mix(picture, frame(), shown(frame(), CANVAS), null, 1f);
    }
    // A stage for each mask, which is made of a frame of its own.
    assertThat(framesRead(picture, TEN)).filteredOn(n -> n > 1).containsExactly(5, 5);
  }

  /** A frame for each of some boxes. */
  private static Node inBoxes(int steps, IntFunction<Region> box) {
    Node picture = frame();
    for (int i = 0; i < steps; i++) {
      picture = new Mix(picture, frame(), shown(frame(), box.apply(i)), null, 1f);
    }
    return picture;
  }

  @Test
  void whatShowsInASmallPartOfTheWidthWeighsLittle() {
    Node quarters = inBoxes(19, i -> new Region(i, 0, i + 15, 256));
    assertThat(framesRead(quarters, TEN)).filteredOn(n -> n > 1).containsExactly(20);
    Node more = inBoxes(20, i -> new Region(i, 0, i + 15, 256));
    assertThat(framesRead(more, TEN)).filteredOn(n -> n > 0).hasSize(20 + 2);
  }

  @Test
  void whatNeverMeetsInABandIsNotCut() {
    Node rows = inBoxes(16, i -> new Region(0, i % 4 * 64, 60, i % 4 * 64 + 64));
    assertThat(framesRead(rows, TEN)).filteredOn(n -> n > 1).containsExactly(17);
    Node lower = inBoxes(16, i -> new Region(0, i % 4 * 64, 60, Math.min(256, i % 4 * 64 + 65)));
    assertThat(framesRead(lower, TEN)).filteredOn(n -> n > 1).hasSizeGreaterThan(1);
  }

  @Test
  void stepsThatReadNothingAreNoReasonToCut() {
    Node picture = frame();
    for (int i = 0; i < 100; i++) {
      picture = new Mix(picture, new Counting(picture, new LongAdder()), null, null, 0.5f);
    }
    assertThat(framesRead(picture, TEN)).containsExactly(1);
  }

  @Test
  void aGroupIsCutLikeOtherStepsUnlessItIsMasked() {
    Node base = frame();
    Node group = laid(base, 20);
    assertThat(framesRead(new Mix(base, group, null, null, 1f), TEN)).hasSizeGreaterThan(2);
    Node mask = shown(base, CANVAS);
    assertThat(framesRead(new Mix(base, group, mask, null, 1f), TEN)).contains(21);
  }

  /** A masked group is not cut inside: before it, and behind it with all that it reads counted. */
  @Test
  void whatAMaskedGroupReadsCountsBehindTheCutBeforeIt() {
    Node below = laid(frame(), 4);
    Node grouped = new Mix(below, laid(below, 12), shown(frame(), CANVAS), null, 1f);
    assertThat(framesRead(laid(grouped, 5), TEN)).containsExactly(5, 1, 12, 5);
  }

  /** They would take the room of what is dearer; those that a mask reads are kept as ever. */
  @Test
  void whatIsFinishedForTheSakeOfMemoryAloneIsNotKept() {
    Node below = laid(frame(), 9);
    assertThat(passing(laid(below, 9))).containsExactly(true, false);
    Node masked = new Mix(below, frame(), shown(below, CANVAS), null, 1f);
    // The picture below, the mask of it, the whole: a cut where one is anyway.
    assertThat(passing(laid(masked, 1))).containsExactly(false, false, false);
    Node few = laid(frame(), 4); // below the group, and read once more by its first leg
    assertThat(passing(new Mix(few, laid(few, 20), null, null, 1f)))
        .containsExactly(true, true, true, false);
  }

  @Test
  void aStoreHasTheSameWithLegsAndWithout() {
    assertThat(kept(TEN)).isPositive().isEqualTo(kept(TEN.withLegLeaves(1000)));
  }

  private static long kept(PlanSettings settings) {
    Node picture = laid(frame(), 30);
    BoundedStore store = new BoundedStore(1 << 30);
    Output output = new Output(picture, CANVAS, new Collected(CANVAS));
    ExecutorService pool = Executors.newFixedThreadPool(1);
    try (Job job = new Job(Plan.of(List.of(picture), settings), List.of(output), BAND, store)) {
      job.run(pool, 1, job.floorBytes(), share -> {}, Stop.NEVER);
    } finally {
      pool.shutdown();
    }
    return store.bytes();
  }

  private static List<Boolean> passing(Node picture) {
    return Plan.of(List.of(picture), TEN).stages().stream().map(Stage::passing).toList();
  }

  /** A single thread holds what one leg reads, and the picture before it and behind it. */
  @Test
  void memoryDoesNotGrowWithTheNumberOfSteps() {
    assertThat(floorBytes(laid(frame(), 200), TEN)).isEqualTo(floorBytes(laid(frame(), 100), TEN));
    long uncut = floorBytes(laid(frame(), 200), TEN.withLegLeaves(1000));
    assertThat(floorBytes(laid(frame(), 200), TEN)).isLessThan(uncut / 5);
  }
}
