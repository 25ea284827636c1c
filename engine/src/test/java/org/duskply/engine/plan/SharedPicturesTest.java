package org.duskply.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.LongAdder;
import org.duskply.engine.frame.FrameSource.Access;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.render.Job;
import org.duskply.engine.render.Output;
import org.duskply.engine.render.Store;
import org.duskply.engine.testing.Collected;
import org.duskply.engine.testing.NoiseFrame;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** A picture that a mask reads is made once, whatever stands on it. */
class SharedPicturesTest {
  private static final int WIDTH = 64;
  private static final int HEIGHT = 200;
  private static final int BAND = 16;
  private static final Region CANVAS = Region.ofSize(WIDTH, HEIGHT);

  private final LongAdder pixels = new LongAdder();
  private final List<FrameNode> frames = new ArrayList<>();

  private FrameNode frame(long seed) {
    FrameNode frame = new NoiseFrame(seed, WIDTH, HEIGHT, 8, Access.RANDOM).node(0);
    frames.add(frame);
    return frame;
  }

  /** A step that counts the pixels it is computed for. */
  private Node counting(Node below) {
    return new Counting(below, pixels);
  }

  private Node steps(Node below, int count) {
    Node picture = below;
    for (int i = 0; i < count; i++) {
      picture = mix(picture, counting(picture), null);
    }
    return picture;
  }

  private static Node mix(Node below, Node step, @Nullable Node mask) {
    return new Mix(below, step, mask, null, 0.5f);
  }

  /** Renders and returns the job, its counters full. */
  private Job render(Node picture) {
    PlanSettings settings = new PlanSettings(BAND, 32, true);
    Plan plan = Plan.of(List.of(picture), settings);
    Output output = new Output(picture, CANVAS, new Collected(CANVAS));
    ExecutorService pool = Executors.newFixedThreadPool(2);
    try (Job job = new Job(plan, List.of(output), BAND, Store.NONE)) {
      job.run(pool, 2, job.floorBytes(), share -> {}, Stop.NEVER);
      for (FrameNode frame : frames) {
        assertThat(job.counters().unitsDecoded(plan.frames().indexOf(frame)))
            .as(frame.name())
            .isEqualTo(frame.source().units());
      }
      for (int s = 0; s < plan.stages().size(); s++) {
        assertThat(job.counters().bandsRun(s)).isEqualTo((HEIGHT + BAND - 1) / BAND);
      }
      return job;
    } finally {
      pool.shutdown();
    }
  }

  /**
   * How often all of the picture was passed, rounded up: where a mask is 0 its step does not run.
   */
  private long passes() {
    long all = (long) WIDTH * HEIGHT;
    return (pixels.sum() + all - 1) / all;
  }

  @Test
  void aMaskOfThePictureBelowDoesNotDoubleTheWork() {
    Node below = steps(frame(1), 20);
    render(mix(below, frame(2), new OfPicture(below, 0)));
    assertThat(passes()).isEqualTo(20);
  }

  @Test
  void norDoMasksOnMasks() {
    Node picture = frame(1);
    for (int i = 0; i < 6; i++) {
      picture = steps(picture, 2);
      picture = mix(picture, counting(picture), new OfPicture(picture, i % 2));
    }
    render(picture);
    assertThat(passes()).isEqualTo(18);
  }

  @Test
  void aGroupWhoseStepsLookAtWhatIsBelowThemMakesThePictureBelowItOnce() {
    Node below = steps(frame(1), 20);
    Node first = mix(below, frame(2), null);
    Node second = mix(first, counting(first), new OfPicture(first, 0));
    Node third = mix(second, frame(3), new OfPicture(second, 1));
    render(mix(below, third, null));
    assertThat(passes()).isEqualTo(21);
  }

  @Test
  void withoutSuchMasksNothingIsStagedForIt() {
    Node below = steps(frame(1), 20);
    Plan plan = Plan.of(List.of(below), PlanSettings.DEFAULT);
    assertThat(plan.stages()).hasSize(1);
    Node masked = mix(below, frame(2), new OfPicture(frame(3), 0));
    assertThat(Plan.of(List.of(masked), PlanSettings.DEFAULT).stages()).hasSize(2);
  }

  private static Node around(Node mask, int reach) {
    return new FakeMask(List.of(mask), reach, false);
  }

  @Test
  void reachesAddUpAlongTheLongestWay() {
    Node below = frame(1);
    Node near = new OfPicture(below, 3);
    Node far = around(around(near, 100), 20);
    Node picture = mix(mix(below, counting(below), near), frame(2), far);
    Reach reach = new Reach();
    assertThat(reach.of(near)).isZero();
    assertThat(reach.of(picture)).isEqualTo(120);
    assertThat(reach.of(around(new OfPicture(picture, 0), 7))).isEqualTo(127);
  }

  @Test
  void aContentKeyLooksAtEachNodeOnceHoweverMasksOverlap() {
    Random random = new Random(3);
    Node picture = frame(1);
    LongAdder looks = new LongAdder();
    int count = 40;
    for (int i = 0; i < count; i++) {
      int left = random.nextInt(32);
      int top = random.nextInt(100);
      Region box = new Region(left, top, left + 32, top + 100);
      picture = mix(picture, counting(picture), new InBox(picture, box, looks));
    }
    keys(picture, CANVAS);
    assertThat(looks.sum()).isEqualTo(count);
  }

  @Test
  void aContentKeyChangesWithWhatIsSeenThereAlone() {
    Region low = new Region(0, 150, WIDTH, 160);
    Region high = new Region(0, 10, WIDTH, 20);
    Node base = frame(1);
    Node step = counting(base);
    Node here = mix(base, step, new InBox(base, high, new LongAdder()));
    Node there = mix(base, step, new InBox(base, high.move(0, 2), new LongAdder()));
    assertThat(keys(here, low)).isEqualTo(keys(there, low)).isEqualTo(keys(base, low));
    assertThat(keys(here, high)).isNotEqualTo(keys(there, high));
    Node upon = mix(here, counting(here), new InBox(here, low, new LongAdder()));
    assertThat(keys(upon, high)).isEqualTo(keys(here, high));
    assertThat(keys(upon, low)).isNotEqualTo(keys(here, low));
  }

  /** The keys of a part of a picture, band by band. */
  private static List<Key> keys(Node picture, Region part) {
    Bands bands = new Bands(BAND);
    Keys keys = new Keys(new IdentityHashMap<>(Map.of(picture, part)), bands);
    List<Key> all = new ArrayList<>();
    for (int k = bands.first(part); k <= bands.last(part); k++) {
      all.add(keys.of(picture, k, bands.cut(part, k)));
    }
    return all;
  }

  private record OfPicture(Node picture, int plane) implements PointNode {
    @Override
    public List<Node> inputs() {
      return List.of(picture);
    }

    @Override
    public int planes() {
      return 1;
    }

    @Override
    public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
      for (int i = from; i < to; i++) {
        out[0][i] = Math.min(1f, in[0][plane][i]);
      }
    }

    @Override
    public void describe(KeyWriter key) {
      key.word("of picture").number(plane);
    }
  }
}
