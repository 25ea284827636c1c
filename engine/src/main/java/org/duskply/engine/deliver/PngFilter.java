package org.duskply.engine.deliver;

/**
 * The row filters of PNG (third edition, section 9.2). Bytes are taken against the byte {@code
 * step} before in the same row (a), the one above (b) and the one above that (c), modulo 256.
 */
final class PngFilter {
  static final int SUB = 1;
  static final int UP = 2;
  static final int AVERAGE = 3;
  static final int PAETH = 4;

  private PngFilter() {}

  /**
   * Writes a filtered row.
   *
   * @param filter one of the constants
   * @param row the row's bytes
   * @param above the bytes of the row above, as many; not read by {@link #SUB}
   * @param step bytes of a pixel
   * @param out takes the filter's number and the filtered bytes
   */
  static void apply(int filter, byte[] row, byte[] above, int step, byte[] out) {
    out[0] = (byte) filter;
    switch (filter) {
      case SUB -> sub(row, step, out);
      case UP -> up(row, above, out);
      case AVERAGE -> average(row, above, step, out);
      case PAETH -> paeth(row, above, step, out);
      default -> throw new IllegalArgumentException("filter " + filter);
    }
  }

  private static void sub(byte[] row, int step, byte[] out) {
    for (int i = 0; i < row.length; i++) {
      int a = i < step ? 0 : row[i - step];
      out[i + 1] = (byte) (row[i] - a);
    }
  }

  private static void up(byte[] row, byte[] above, byte[] out) {
    for (int i = 0; i < row.length; i++) {
      out[i + 1] = (byte) (row[i] - above[i]);
    }
  }

  private static void average(byte[] row, byte[] above, int step, byte[] out) {
    for (int i = 0; i < row.length; i++) {
      int a = i < step ? 0 : row[i - step] & 0xFF;
      out[i + 1] = (byte) (row[i] - (a + (above[i] & 0xFF) >> 1));
    }
  }

  private static void paeth(byte[] row, byte[] above, int step, byte[] out) {
    for (int i = 0; i < row.length; i++) {
      int a = i < step ? 0 : row[i - step] & 0xFF;
      int c = i < step ? 0 : above[i - step] & 0xFF;
      out[i + 1] = (byte) (row[i] - nearest(a, above[i] & 0xFF, c));
    }
  }

  /** Which of a, b, c is nearest to a + b − c; of equals the first. */
  private static int nearest(int a, int b, int c) {
    int toA = Math.abs(b - c);
    int toB = Math.abs(a - c);
    int toC = Math.abs(a + b - 2 * c);
    if (toA <= toB && toA <= toC) {
      return a;
    }
    return toB <= toC ? b : c;
  }
}
