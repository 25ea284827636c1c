package org.duskply.engine.frame;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Rows of 8- or 16-bit whole numbers: byte order, then differences (TIFF 6.0, section 14), then the
 * samples that are kept, then white-is-zero.
 */
final class TiffPlainRow implements TiffRow {
  private static final VarHandle LITTLE_ENDIAN =
      MethodHandles.byteArrayViewVarHandle(short[].class, ByteOrder.LITTLE_ENDIAN);

  private static final int PIXEL_BYTES = 6; // of three samples of 16 bits

  private final ByteOrder order;
  private final RowLayout layout;
  private final int stored;
  private final int channels;
  private final boolean drops;
  private final boolean wide;
  private final boolean differences;
  private final boolean whiteIsZero;
  private byte[] byteRow = new byte[0];
  private short[] shortRow = new short[0];

  TiffPlainRow(TiffPicture picture, RowLayout layout, ByteOrder order) {
    this.order = order;
    this.layout = layout;
    this.stored = layout.stored();
    this.channels = layout.channels();
    this.drops = !layout.whole();
    this.wide = picture.bits() == 16;
    this.differences = picture.predicted() == 2;
    this.whiteIsZero = picture.photometric() == TiffPicture.MIN_IS_WHITE && layout.first() == 0;
  }

  @Override
  public void row(byte[] packed, int from, int left, int pixels, Object into, int at) {
    if (wide && differences && stored == 3 && !drops) {
      sum(packed, from, left, pixels, (short[]) into, at);
    } else if (wide) {
      shorts(packed, from, left, pixels, (short[]) into, at);
    } else {
      bytes(packed, from, left, pixels, (byte[]) into, at);
    }
    if (whiteIsZero) {
      turn(pixels, into, at);
    }
  }

  /** What most frames are: three sums side by side, while the bytes are put in order. */
  private void sum(byte[] packed, int from, int left, int pixels, short[] into, int at) {
    boolean swap = order == ByteOrder.BIG_ENDIAN;
    int red = 0;
    int green = 0;
    int blue = 0;
    int i = from;
    for (int end = from + PIXEL_BYTES * left; i < end; i += PIXEL_BYTES) {
      red += sample(packed, i, swap);
      green += sample(packed, i + 2, swap);
      blue += sample(packed, i + 4, swap);
    }
    for (int o = at, end = at + 3 * pixels; o < end; o += 3, i += PIXEL_BYTES) {
      red += sample(packed, i, swap);
      green += sample(packed, i + 2, swap);
      blue += sample(packed, i + 4, swap);
      into[o] = (short) red;
      into[o + 1] = (short) green;
      into[o + 2] = (short) blue;
    }
  }

  private static short sample(byte[] packed, int at, boolean swap) {
    short stored = (short) LITTLE_ENDIAN.get(packed, at);
    return swap ? Short.reverseBytes(stored) : stored;
  }

  private void bytes(byte[] packed, int from, int left, int pixels, byte[] into, int at) {
    if (!differences && !drops) {
      System.arraycopy(packed, from + left * stored, into, at, pixels * stored);
      return;
    }
    int count = (left + pixels) * stored;
    byteRow = byteRow.length < count ? new byte[count] : byteRow;
    byte[] row = byteRow;
    System.arraycopy(packed, from, row, 0, count);
    if (differences) {
      for (int i = stored; i < count; i++) {
        row[i] += row[i - stored];
      }
    }
    if (!drops) {
      System.arraycopy(row, left * stored, into, at, pixels * stored);
      return;
    }
    for (int k = 0; k < layout.kept().length; k++) {
      int i = left * stored + layout.kept()[k];
      int o = at + layout.first() + k;
      for (int p = 0; p < pixels; p++, i += stored, o += channels) {
        into[o] = row[i];
      }
    }
  }

  private void shorts(byte[] packed, int from, int left, int pixels, short[] into, int at) {
    if (!differences && !drops) {
      samples(packed, from, left * stored, pixels * stored, into, at);
      return;
    }
    int count = (left + pixels) * stored;
    shortRow = shortRow.length < count ? new short[count] : shortRow;
    short[] row = shortRow;
    samples(packed, from, 0, count, row, 0);
    if (differences) {
      for (int i = stored; i < count; i++) {
        row[i] += row[i - stored];
      }
    }
    if (!drops) {
      System.arraycopy(row, left * stored, into, at, pixels * stored);
      return;
    }
    for (int k = 0; k < layout.kept().length; k++) {
      int i = left * stored + layout.kept()[k];
      int o = at + layout.first() + k;
      for (int p = 0; p < pixels; p++, i += stored, o += channels) {
        into[o] = row[i];
      }
    }
  }

  /** {@code count} samples, from the one numbered {@code first} of the row on. */
  private void samples(byte[] packed, int from, int first, int count, short[] into, int at) {
    ByteBuffer.wrap(packed, from + 2 * first, 2 * count)
        .order(order)
        .asShortBuffer()
        .get(into, at, count);
  }

  private void turn(int pixels, Object into, int at) {
    for (int p = 0, o = at; p < pixels; p++, o += channels) {
      if (into instanceof short[] shorts) {
        shorts[o] = (short) ~shorts[o];
      } else {
        byte[] bytes = (byte[]) into;
        bytes[o] = (byte) ~bytes[o];
      }
    }
  }
}
