package org.duskply.engine;

import java.time.Duration;

/**
 * Told how far a rendering has come, and asked whether to go on. Called by several threads, one at
 * a time; must return soon.
 */
@FunctionalInterface
public interface Progress {
  /** Wants to know nothing and never stops. */
  Progress SILENT = share -> {};

  /**
   * So much is done.
   *
   * @param share 0 to 1, never falling, weighted by the time that the parts of the work take
   */
  void reached(double share);

  /**
   * About how long the rest will take, at the pace so far. Said right before {@link #reached}, as
   * soon as there is enough to go by.
   */
  default void left(Duration about) {}

  /**
   * Whether to give up. Once true, the rendering ends within a fraction of a second, and no file is
   * left half-written.
   */
  default boolean cancelled() {
    return false;
  }
}
