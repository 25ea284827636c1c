package org.duskply.engine.render;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Any order that the schedule allows ends, and never takes more than the budget. */
class ScheduleTest {
  private static final int SEEDS = 1000;

  @Test
  void everyAllowedOrderEndsWithinTheBudget() {
    for (int seed = 0; seed < SEEDS; seed++) {
      Random random = new Random(seed);
      TaskGraph graph = randomGraph(random, 5 + random.nextInt(60));
      long extra = random.nextInt(3) == 0 ? 0 : random.nextInt(500);
      runSomehow(graph, graph.floorBytes() + extra, random, 1 + random.nextInt(6), seed);
    }
  }

  @Test
  void oneByteLessThanTheFloorIsRefused() {
    TaskGraph graph = randomGraph(new Random(5), 40);
    new Schedule(graph, graph.floorBytes());
    assertThatThrownBy(() -> new Schedule(graph, graph.floorBytes() - 1))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aSingleThreadInOrderTakesTheFloorAndNoMore() {
    TaskGraph graph = randomGraph(new Random(77), 50);
    Schedule schedule = new Schedule(graph, graph.floorBytes());
    for (int i = 0; i < graph.size(); i++) {
      assertThat(schedule.next()).isEqualTo(i);
      schedule.start(i);
      schedule.finish(i);
    }
    assertThat(schedule.finished()).isTrue();
    assertThat(schedule.peak()).isEqualTo(graph.floorBytes());
    assertThat(schedule.used()).isZero();
    assertThat(schedule.share()).isEqualTo(1);
  }

  /** Starts any task that may start and finishes any that runs, as a seed says. */
  private static void runSomehow(
      TaskGraph graph, long budget, Random random, int workers, int seed) {
    Schedule schedule = new Schedule(graph, budget);
    List<Integer> running = new ArrayList<>();
    int steps = 0;
    while (!schedule.finished()) {
      List<Integer> startable = new ArrayList<>();
      for (int i = 0; i < graph.size(); i++) {
        if (schedule.mayStart(i)) {
          startable.add(i);
        }
      }
      boolean start =
          !startable.isEmpty()
              && running.size() < workers
              && (running.isEmpty() || random.nextBoolean());
      if (start) {
        int i = startable.get(random.nextInt(startable.size()));
        schedule.start(i);
        running.add(i);
      } else {
        assertThat(running).as("seed %d stalls", seed).isNotEmpty();
        schedule.finish(running.remove(random.nextInt(running.size())));
      }
      assertThat(schedule.used()).as("seed %d", seed).isLessThanOrEqualTo(budget);
      assertThat(++steps).isLessThanOrEqualTo(2 * graph.size());
    }
    assertThat(schedule.used()).as("seed %d", seed).isZero();
  }

  private static TaskGraph randomGraph(Random random, int size) {
    List<Task> tasks = new ArrayList<>();
    List<Task> last = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      Task task = new Weight(random.nextInt(50), random.nextInt(100));
      for (int k = 0; k < Math.min(i, random.nextInt(4)); k++) {
        Task other = tasks.get(random.nextInt(i));
        (random.nextInt(3) == 0 ? task.after() : task.reads()).add(other);
      }
      tasks.add(task);
      if (random.nextInt(4) == 0 || i == size - 1) {
        last.add(task);
      }
    }
    return new TaskGraph(last);
  }

  /** A task that only weighs. */
  private static final class Weight extends Task {
    private final long scratch;
    private final long result;

    Weight(long scratch, long result) {
      this.scratch = scratch;
      this.result = result;
    }

    @Override
    long scratchBytes() {
      return scratch;
    }

    @Override
    long resultBytes() {
      return result;
    }

    @Override
    double costNanos() {
      return 1;
    }

    @Override
    void run() {}
  }
}
