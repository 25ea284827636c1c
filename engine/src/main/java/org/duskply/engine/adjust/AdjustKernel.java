package org.duskply.engine.adjust;

/**
 * An adjustment prepared for one working space: changes linear working RGB in place. Immutable and
 * thread-safe.
 */
public interface AdjustKernel {
  /** Changes pixels {@code from} up to {@code to} of the three planes. */
  void run(float[] red, float[] green, float[] blue, int from, int to);
}
