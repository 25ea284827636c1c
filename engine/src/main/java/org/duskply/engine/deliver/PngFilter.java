package org.duskply.engine.deliver;

/**
 * The row filters that are used, of the five of PNG (third edition, section 9.2). Each writes the
 * filter's number and then the row's bytes, modulo 256, less what it foretells them to be.
 */
final class PngFilter {
  private static final byte SUB = 1;
  private static final byte AVERAGE = 3;

  private PngFilter() {}

  /**
   * Foretells the same byte of the pixel before, 0 where there is none: filter Sub.
   *
   * @param step bytes of a pixel
   */
  static void difference(byte[] row, int step, byte[] out, int at) {
    out[at] = SUB;
    System.arraycopy(row, 0, out, at + 1, step);
    for (int i = step, o = at + 1 + step; i < row.length; i++, o++) {
      out[o] = (byte) (row[i] - row[i - step]);
    }
  }

  /**
   * Foretells the mean, rounded down, of the same byte of the pixel before and of the one above:
   * filter Average.
   *
   * @param above the bytes of the row above, as many
   * @param step bytes of a pixel
   */
  static void average(byte[] row, byte[] above, int step, byte[] out, int at) {
    out[at] = AVERAGE;
    for (int i = 0, o = at + 1; i < step; i++, o++) {
      out[o] = (byte) (row[i] - ((above[i] & 0xFF) >> 1));
    }
    for (int i = step, o = at + 1 + step; i < row.length; i++, o++) {
      out[o] = (byte) (row[i] - (((row[i - step] & 0xFF) + (above[i] & 0xFF)) >> 1));
    }
  }
}
