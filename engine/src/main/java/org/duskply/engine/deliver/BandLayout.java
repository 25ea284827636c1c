package org.duskply.engine.deliver;

import org.duskply.engine.pixel.Region;

/**
 * How an RGB picture is cut into bands of whole rows.
 *
 * @param width in pixels
 * @param height in pixels
 * @param depth bits a sample, 8 or 16
 * @param bandRows rows of every band but the last
 */
record BandLayout(int width, int height, int depth, int bandRows) {
  /** Samples a pixel: R, G, B. */
  static final int CHANNELS = 3;

  /** Most bytes of one band's samples: an array's length less room for what packing adds. */
  private static final long MAX_BAND = 1L << 30;

  /** How many bands. */
  int bands() {
    return (int) (((long) height + bandRows - 1) / bandRows);
  }

  /** The pixels of a band. */
  Region area(int band) {
    int top = Math.multiplyExact(band, bandRows);
    return new Region(0, top, width, (int) Math.min(height, (long) top + bandRows));
  }

  /** Samples of a row. */
  int rowSamples() {
    return Math.multiplyExact(width, CHANNELS);
  }

  /** Bytes of a row's samples. */
  long rowBytes() {
    return (long) width * CHANNELS * (depth / 8);
  }

  /** Bytes of the picture's samples. */
  long pictureBytes() {
    return rowBytes() * height;
  }

  /** Whether a band's samples fit into an array. */
  boolean fits() {
    return rowBytes() * Math.min(height, bandRows) <= MAX_BAND;
  }
}
