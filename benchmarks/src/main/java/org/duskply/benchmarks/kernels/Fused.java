package org.duskply.benchmarks.kernels;

/**
 * The work of a fused run: a few rows of a picture, chunk by chunk as the engine takes them, small
 * enough to stay in a core's cache.
 */
final class Fused {
  /** Pixels that are carried through a run at a time. */
  static final int CHUNK = 512;

  /** Pixels of all chunks: nine planes of them are 288 KiB. */
  static final int PIXELS = 16 * CHUNK;

  private Fused() {}

  /** The channels of one pixel. */
  static double[] pixel(float[][] planes, int i) {
    return new double[] {planes[0][i], planes[1][i], planes[2][i]};
  }
}
