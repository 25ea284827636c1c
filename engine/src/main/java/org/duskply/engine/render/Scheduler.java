package org.duskply.engine.render;

import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.function.DoubleConsumer;
import org.duskply.engine.plan.Stop;
import org.jspecify.annotations.Nullable;

/**
 * Carries a {@link TaskGraph} out on several threads. Workers take ready tasks in the graph's order
 * as far as the {@link Schedule} grants their bytes; a worker that finds none leaves, and the next
 * finished task calls others back.
 */
final class Scheduler {
  private final TaskGraph graph;
  private final Executor pool;
  private final int threads;
  private final DoubleConsumer progress;
  private final Stop stop;
  private final Schedule schedule;
  private final Object lock = new Object();
  private int active;
  private @Nullable Throwable failure;

  /**
   * A job about to run.
   *
   * @param pool where workers run; may be shared
   * @param threads most workers at once
   * @param budget bytes that tasks may take; at least the graph's {@code floorBytes}
   * @param progress told the share done, 0 to 1, never falling; called by workers, one at a time
   * @param stop asked before each task
   */
  Scheduler(
      TaskGraph graph,
      Executor pool,
      int threads,
      long budget,
      DoubleConsumer progress,
      Stop stop) {
    this.graph = graph;
    this.pool = pool;
    this.threads = threads;
    this.progress = progress;
    this.stop = stop;
    this.schedule = new Schedule(graph, budget);
  }

  /**
   * Runs all tasks and returns when none is running any more.
   *
   * @return the most bytes that were taken at once
   * @throws CancellationException if {@code stop} asked for it
   */
  long run() {
    synchronized (lock) {
      callWorkers();
      awaitQuiet();
      if (failure != null) {
        throw rethrown(failure);
      }
      if (!schedule.finished()) {
        throw new IllegalStateException("No task could start, yet some are left");
      }
      return schedule.peak();
    }
  }

  private void awaitQuiet() {
    boolean interrupted = false;
    while (active > 0) {
      try {
        lock.wait();
      } catch (InterruptedException e) {
        interrupted = true;
        fail(new CancellationException("The rendering was interrupted."));
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private void callWorkers() {
    int wanted = 0;
    while (active + wanted < threads && wanted < graph.size()) {
      wanted++;
    }
    if (failure == null && schedule.next() >= 0) {
      for (int i = 0; i < wanted; i++) {
        callWorker();
      }
    }
  }

  private void callWorker() {
    active++;
    try {
      pool.execute(this::work);
    } catch (RuntimeException e) { // a pool that takes no more work: the job must still end
      active--;
      fail(e);
    }
  }

  private void work() {
    int task = take();
    while (task >= 0) {
      try {
        stop.check();
        graph.task(task).run();
      } catch (Throwable t) { // whatever it is, the job must end and say so
        synchronized (lock) {
          fail(t);
        }
      }
      task = finishAndTake(task);
    }
  }

  private int take() {
    synchronized (lock) {
      return takeNext();
    }
  }

  private int finishAndTake(int finished) {
    synchronized (lock) {
      schedule.finish(finished);
      report();
      int next = takeNext();
      if (next >= 0) {
        callWorkers();
      }
      return next;
    }
  }

  private void report() {
    try {
      if (failure == null) {
        progress.accept(schedule.share());
      }
    } catch (RuntimeException e) {
      fail(e);
    }
  }

  /** The next task, started; or −1 with this worker signed off. */
  private int takeNext() {
    int next = failure == null ? schedule.next() : -1;
    if (next < 0) {
      active--;
      lock.notifyAll();
    } else {
      schedule.start(next);
    }
    return next;
  }

  private void fail(Throwable t) {
    if (failure == null) {
      failure = t;
    } else if (failure != t) {
      failure.addSuppressed(t);
    }
  }

  private static RuntimeException rethrown(Throwable t) {
    if (t instanceof Error error) {
      throw error;
    }
    if (t instanceof RuntimeException e) {
      return e;
    }
    return new IllegalStateException(t);
  }
}
