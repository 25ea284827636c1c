package org.duskply.engine.plan;

import java.util.concurrent.CancellationException;

/** Asked now and then by everything that takes long whether to go on. Thread-safe. */
@FunctionalInterface
public interface Stop {
  /** Never stops. */
  Stop NEVER = () -> false;

  /** Whether to give up. */
  boolean wanted();

  /**
   * Returns if the work goes on.
   *
   * @throws CancellationException if it does not
   */
  default void check() {
    if (wanted()) {
      throw new CancellationException("The rendering was cancelled.");
    }
  }
}
