package org.duskply.engine.frame;

import org.jspecify.annotations.Nullable;

/**
 * What a recipe asks of a frame while it becomes working light.
 *
 * @param stops of exposure, −32 to 32
 * @param gel a matrix on linear working values, nine numbers row by row, done after the exposure;
 *     null for none
 * @param opaque whether the file's transparency is left out; its colours stay what they are
 */
public record Loading(double stops, double @Nullable [] gel, boolean opaque) {
  /** Nothing is asked. */
  public static final Loading PLAIN = new Loading(0, null, false);

  /** Largest {@link #stops}, up or down. */
  public static final double MOST_STOPS = 32;

  public Loading {
    if (!(Math.abs(stops) <= MOST_STOPS)) {
      throw new IllegalArgumentException("stops: " + stops);
    }
    gel = gel == null ? null : gel.clone();
  }

  /** A change of exposure alone. */
  public static Loading by(double stops) {
    return new Loading(stops, null, false);
  }
}
