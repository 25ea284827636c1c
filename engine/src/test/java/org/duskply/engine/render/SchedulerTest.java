package org.duskply.engine.render;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import org.duskply.engine.plan.Stop;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** How a job ends: well, by a failing task, by a wish, by a pool that is gone. */
@Timeout(60)
class SchedulerTest {
  private final ExecutorService pool = Executors.newFixedThreadPool(4);

  @AfterEach
  void close() {
    pool.shutdownNow();
  }

  private static TaskGraph chain(int length, Runnable each) {
    List<Task> tasks = new ArrayList<>();
    for (int i = 0; i < length; i++) {
      Task task = new Doing(each);
      if (i >= 3) {
        task.reads().add(tasks.get(i - 3));
      }
      tasks.add(task);
    }
    return new TaskGraph(tasks);
  }

  @Test
  void everyTaskRunsOnceAndProgressNeverFalls() {
    AtomicInteger ran = new AtomicInteger();
    List<Double> shares = new ArrayList<>();
    TaskGraph graph = chain(300, ran::incrementAndGet);
    new Scheduler(graph, pool, 4, 1 << 20, shares::add, Stop.NEVER).run();
    assertThat(ran).hasValue(300);
    assertThat(shares).hasSize(300).isSorted().endsWith(1.0);
  }

  @Test
  void aFailingTaskEndsTheJobWithItsOwnException() {
    AtomicInteger ran = new AtomicInteger();
    TaskGraph graph =
        chain(
            300,
            () -> {
              int number = ran.incrementAndGet();
              if (number == 50) {
                throw new IllegalArgumentException("the strip is torn");
              }
              if (number > 50) {
                LockSupport.parkNanos(5_000_000); // the others give the failure time to be heard
              }
            });
    assertThatThrownBy(() -> new Scheduler(graph, pool, 4, 1 << 20, s -> {}, Stop.NEVER).run())
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the strip is torn");
    assertThat(ran.get()).isLessThan(250);
  }

  @Test
  void aWishToStopEndsItSoon() {
    AtomicInteger ran = new AtomicInteger();
    TaskGraph graph = chain(300, ran::incrementAndGet);
    assertThatThrownBy(
            () -> new Scheduler(graph, pool, 2, 1 << 20, s -> {}, () -> ran.get() >= 20).run())
        .isInstanceOf(CancellationException.class);
    assertThat(ran.get()).isBetween(20, 24);
  }

  @Test
  void aThrowingListenerEndsTheJobToo() {
    TaskGraph graph = chain(30, () -> {});
    assertThatThrownBy(
            () ->
                new Scheduler(
                        graph,
                        pool,
                        2,
                        1 << 20,
                        s -> {
                          throw new IllegalStateException("listener");
                        },
                        Stop.NEVER)
                    .run())
        .hasMessage("listener");
  }

  @Test
  void aPoolThatIsGoneIsTold() {
    pool.shutdown();
    TaskGraph graph = chain(30, () -> {});
    assertThatThrownBy(() -> new Scheduler(graph, pool, 2, 1 << 20, s -> {}, Stop.NEVER).run())
        .isInstanceOf(java.util.concurrent.RejectedExecutionException.class);
  }

  @Test
  void anErrorSuchAsAFullHeapIsPassedOn() {
    TaskGraph graph =
        chain(
            10,
            () -> {
              throw new OutOfMemoryError("full");
            });
    assertThatThrownBy(() -> new Scheduler(graph, pool, 2, 1 << 20, s -> {}, Stop.NEVER).run())
        .isInstanceOf(OutOfMemoryError.class);
  }

  /** A task that does something. */
  private static final class Doing extends Task {
    private final Runnable what;

    Doing(Runnable what) {
      this.what = what;
    }

    @Override
    long scratchBytes() {
      return 10;
    }

    @Override
    long resultBytes() {
      return 10;
    }

    @Override
    double costNanos() {
      return 1;
    }

    @Override
    void run() {
      what.run();
    }
  }
}
