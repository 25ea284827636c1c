package org.duskply.engine.deliver;

import java.util.Arrays;

/**
 * How a sample, in codes and fractions of a code, becomes a whole code: {@code ⌊v + r⌋}, where
 *
 * <pre>
 *   r = ½                              to the nearest
 *   r = ½ + ((k + ½)/4096 − ½)         dithered; k = rank[y mod 64][x mod 64], x and y pixels of the file
 * </pre>
 *
 * <p>The ranks are those of {@link DitherRanks}. Of 64 × 64 pixels of one value v, the share that v
 * is above a code gets the next one, to 1/8192: eyes and printers see v, and a sky shows no bands.
 * A value that is a code stays it everywhere, for r lies between 1/8192 and 1 − 1/8192, which is
 * more than the 0.0001 that curve and float can err by in 8 bit.
 *
 * <p>The three channels of a pixel take the same r. So a grey stays grey, pixel by pixel, and what
 * the dither adds is grain in lightness alone, fine enough not to be seen; a rank shifted for each
 * channel would have made less of it, but in colours.
 */
final class Rounding {
  private static final int MASK = DitherRanks.SIDE - 1;

  /** To the nearest code. */
  static final Rounding NEAREST = new Rounding(nearest());

  /** With blue noise of ±½ code. */
  static final Rounding DITHERED = new Rounding(dithered());

  private final float[][] rows;

  private Rounding(float[][] rows) {
    this.rows = rows;
  }

  /**
   * What is added in row {@code y} of the file: in column x it is the element x mod 64. The live
   * array.
   */
  float[] row(int y) {
    return rows[y & MASK];
  }

  private static float[][] nearest() {
    float[] half = new float[DitherRanks.SIDE];
    Arrays.fill(half, 0.5f);
    float[][] rows = new float[DitherRanks.SIDE][];
    Arrays.fill(rows, half);
    return rows;
  }

  /** ½ + ((k + ½)/4096 − ½) is (2k + 1)/8192, which a float holds exactly. */
  private static float[][] dithered() {
    short[] ranks = DitherRanks.read();
    float[][] rows = new float[DitherRanks.SIDE][DitherRanks.SIDE];
    for (int i = 0; i < ranks.length; i++) {
      rows[i / DitherRanks.SIDE][i % DitherRanks.SIDE] = (2 * ranks[i] + 1) * 0x1p-13f;
    }
    return rows;
  }
}
