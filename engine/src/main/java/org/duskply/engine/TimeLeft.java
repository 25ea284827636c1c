package org.duskply.engine;

import java.time.Duration;
import java.util.function.LongSupplier;

/**
 * Passes on how far a rendering has come, and adds how long the rest will take at the pace so far.
 * Shares are weighted by time, so the pace of all that is done is the best guess of the rest. Says
 * nothing before {@value #LEAST_SECONDS} s and {@value #LEAST_SHARE} of the work, when a guess
 * would be worth little. Looks at the clock, and changes no picture by it.
 */
final class TimeLeft {
  private static final double NANOS = 1e9;
  private static final double LEAST_SECONDS = 0.5;
  private static final double LEAST_SHARE = 0.02;

  private final Progress progress;
  private final LongSupplier clock;
  private final long start;

  /**
   * A new rendering, beginning now.
   *
   * @param clock nanoseconds from any origin, never falling
   */
  TimeLeft(Progress progress, LongSupplier clock) {
    this.progress = progress;
    this.clock = clock;
    this.start = clock.getAsLong();
  }

  /** So much is done. */
  void reached(double share) {
    double seconds = (clock.getAsLong() - start) / NANOS;
    if (share >= LEAST_SHARE && seconds >= LEAST_SECONDS) {
      double left = seconds * (1 - Math.min(1, share)) / share;
      progress.left(Duration.ofMillis(Math.round(1000 * left)));
    }
    progress.reached(share);
  }
}
