package org.duskply.engine.render;

import java.util.ArrayList;
import java.util.List;

/**
 * One piece of work: it reads what earlier tasks left, and leaves a result that is kept until the
 * last of its readers has finished. No task ever waits for another while it runs.
 */
abstract class Task {
  private final List<Task> reads = new ArrayList<>();
  private final List<Task> after = new ArrayList<>();

  /** Bytes taken while it runs, beside its result. */
  abstract long scratchBytes();

  /** Bytes of its result. */
  abstract long resultBytes();

  /** Roughly how long it takes, in nanoseconds of one core; for progress alone. */
  abstract double costNanos();

  /** Does the work. Everything it reads has been done, and what those tasks wrote can be seen. */
  abstract void run();

  /** Lets go of the result: no reader is left. */
  void release() {}

  /** Tasks whose results it reads. */
  final List<Task> reads() {
    return reads;
  }

  /** Tasks that must have finished before it, though it reads nothing of them. */
  final List<Task> after() {
    return after;
  }
}
