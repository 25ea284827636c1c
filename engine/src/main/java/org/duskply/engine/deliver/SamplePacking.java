package org.duskply.engine.deliver;

/**
 * Unsigned codes of a row into bytes. All methods write {@code count} samples from {@code at} on.
 */
final class SamplePacking {
  private SamplePacking() {}

  /** One byte a sample; codes are at most 255. */
  static void bytes(short[] codes, int count, byte[] out, int at) {
    for (int i = 0; i < count; i++) {
      out[at + i] = (byte) codes[i];
    }
  }

  /** Two bytes a sample, the lower first. */
  static void littleEndian(short[] codes, int count, byte[] out, int at) {
    for (int i = 0; i < count; i++) {
      int code = codes[i];
      out[at + 2 * i] = (byte) code;
      out[at + 2 * i + 1] = (byte) (code >> 8);
    }
  }

  /** Two bytes a sample, the higher first. */
  static void bigEndian(short[] codes, int count, byte[] out, int at) {
    for (int i = 0; i < count; i++) {
      int code = codes[i];
      out[at + 2 * i] = (byte) (code >> 8);
      out[at + 2 * i + 1] = (byte) code;
    }
  }

  /**
   * Each sample less the same channel's of the pixel before, modulo 2¹⁶ and so modulo 2⁸: TIFF 6.0
   * section 14, horizontal differencing. In place, from the end.
   */
  static void difference(short[] codes, int count, int channels) {
    for (int i = count - 1; i >= channels; i--) {
      codes[i] -= codes[i - channels];
    }
  }
}
