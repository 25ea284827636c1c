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
  static void difference(byte[] row, int step, byte[] out) {
    out[0] = SUB;
    for (int i = 0; i < row.length; i++) {
      int before = i < step ? 0 : row[i - step];
      out[i + 1] = (byte) (row[i] - before);
    }
  }

  /**
   * Foretells the mean, rounded down, of the same byte of the pixel before and of the one above:
   * filter Average.
   *
   * @param above the bytes of the row above, as many
   * @param step bytes of a pixel
   */
  static void average(byte[] row, byte[] above, int step, byte[] out) {
    out[0] = AVERAGE;
    for (int i = 0; i < row.length; i++) {
      int before = i < step ? 0 : row[i - step] & 0xFF;
      out[i + 1] = (byte) (row[i] - ((before + (above[i] & 0xFF)) >> 1));
    }
  }
}
