package org.duskply.engine.frame;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Rows of floats of 16, 24, 32 or 64 bits, as they are, as differences of their bit patterns
 * (predictor 2), or as differences of bytes sorted by their weight (predictor 3). The latter and
 * the 24-bit form (a sign, 7 bits of exponent, 16 of fraction) are those of Adobe's TIFF Technical
 * Note 3.
 */
final class TiffFloatRow implements TiffRow {
  private final ByteOrder order;
  private final RowLayout layout;
  private final int bytes;
  private final int samples;
  private final int predictor;
  private final byte[] sorted;
  private final ByteBuffer plain;

  /** For rows that are stored with {@code columns} pixels. */
  TiffFloatRow(TiffPicture picture, RowLayout layout, ByteOrder order, int columns) {
    this.layout = layout;
    this.bytes = picture.bits() / 8;
    this.samples = columns * layout.stored();
    this.predictor = picture.predicted();
    this.order = predictor == 3 ? ByteOrder.BIG_ENDIAN : order;
    this.sorted = new byte[predictor == 3 ? samples * bytes : 0];
    this.plain = ByteBuffer.allocate(samples * bytes).order(this.order);
  }

  @Override
  public void row(byte[] packed, int from, int left, int pixels, Object into, int at) {
    if (predictor == 3) {
      unsort(packed, from);
    } else {
      plain.put(0, packed, from, samples * bytes);
    }
    if (predictor == 2) {
      sum();
    }
    float[] out = (float[]) into;
    for (int k = 0; k < layout.kept().length; k++) {
      int i = left * layout.stored() + layout.kept()[k];
      int o = at + layout.first() + k;
      for (int p = 0; p < pixels; p++, i += layout.stored(), o += layout.channels()) {
        out[o] = value(i);
      }
    }
  }

  /** Sums the bytes, then takes one of each weight for each sample. */
  private void unsort(byte[] packed, int from) {
    int stored = layout.stored();
    System.arraycopy(packed, from, sorted, 0, sorted.length);
    for (int i = stored; i < sorted.length; i++) {
      sorted[i] += sorted[i - stored];
    }
    byte[] out = plain.array();
    for (int weight = 0; weight < bytes; weight++) {
      for (int s = 0, i = weight * samples, o = weight; s < samples; s++, i++, o += bytes) {
        out[o] = sorted[i];
      }
    }
  }

  private void sum() {
    for (int s = layout.stored(); s < samples; s++) {
      int before = s - layout.stored();
      if (bytes == 2) {
        plain.putShort(2 * s, (short) (plain.getShort(2 * s) + plain.getShort(2 * before)));
      } else {
        plain.putInt(4 * s, plain.getInt(4 * s) + plain.getInt(4 * before));
      }
    }
  }

  private float value(int sample) {
    return switch (bytes) {
      case 2 -> half(plain.getShort(2 * sample));
      case 3 -> short24(sample);
      case 4 -> plain.getFloat(4 * sample);
      default -> (float) plain.getDouble(8 * sample);
    };
  }

  /** IEEE 754 binary16, exactly. */
  static float half(short stored) {
    int exponent = stored >> 10 & 0x1f;
    int fraction = stored & 0x3ff;
    float magnitude =
        exponent == 0
            ? fraction * 0x1p-24f
            : exponent == 31
                ? fraction == 0 ? Float.POSITIVE_INFINITY : Float.NaN
                : Float.intBitsToFloat((exponent + 112) << 23 | fraction << 13);
    return stored < 0 ? -magnitude : magnitude;
  }

  private float short24(int sample) {
    int high = plain.get(3 * sample) & 0xff;
    int middle = plain.get(3 * sample + 1) & 0xff;
    int low = plain.get(3 * sample + 2) & 0xff;
    boolean bigEnd = order == ByteOrder.BIG_ENDIAN;
    int bits = bigEnd ? high << 16 | middle << 8 | low : low << 16 | middle << 8 | high;
    int exponent = bits >> 16 & 0x7f;
    int fraction = bits & 0xffff;
    float magnitude =
        exponent == 0
            ? fraction * 0x1p-78f
            : exponent == 127
                ? fraction == 0 ? Float.POSITIVE_INFINITY : Float.NaN
                : Float.intBitsToFloat((exponent + 64) << 23 | fraction << 7);
    return (bits & 0x800000) != 0 ? -magnitude : magnitude;
  }
}
