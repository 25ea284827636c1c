package org.duskply.engine.frame;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.duskply.engine.frame.FrameInfo.Alpha;

/**
 * Turns one unpacked row of a strip or tile into samples: byte order, then differences (TIFF 6.0,
 * section 14), then the samples that are kept, then white-is-zero. Where all stored samples are
 * kept, this happens in place in the unit's own array. For one thread.
 */
final class TiffRow {
  private final ByteOrder order;
  private final int stored;
  private final int channels;
  private final boolean drops;
  private final int[] kept;
  private final boolean differences;
  private final boolean whiteIsZero;
  private byte[] byteRow = new byte[0];
  private short[] shortRow = new short[0];

  TiffRow(TiffPicture picture, ByteOrder order) {
    this.order = order;
    this.stored = picture.stored();
    this.channels = picture.channels();
    this.drops = picture.drops();
    this.kept = new int[channels];
    for (int c = 0; c < channels; c++) {
      kept[c] = c < picture.colours() ? c : picture.alphaAt();
    }
    this.differences = picture.differences();
    this.whiteIsZero = picture.photometric() == TiffPicture.MIN_IS_WHITE;
  }

  /** Most bytes that are held for pictures whose rows have {@code pixels} pixels. */
  static long workingBytes(TiffPicture picture, int pixels) {
    return picture.drops() ? picture.rowBytes(pixels) : 0;
  }

  /** Whether white-is-zero can be turned round without touching colours that hold alpha. */
  static boolean canInvert(TiffPicture picture) {
    return picture.photometric() != TiffPicture.MIN_IS_WHITE || picture.alpha() != Alpha.ASSOCIATED;
  }

  /**
   * @param packed the unpacked bytes, the row's first at {@code from}
   * @param pixels how many pixels of the row
   * @param into where the first kept sample goes, at {@code at}
   */
  void bytes(byte[] packed, int from, int pixels, byte[] into, int at) {
    int count = pixels * stored;
    byte[] row = into;
    int start = at;
    if (drops) {
      row = byteRow(count);
      start = 0;
    }
    System.arraycopy(packed, from, row, start, count);
    if (differences) {
      for (int i = start + stored, end = start + count; i < end; i++) {
        row[i] += row[i - stored];
      }
    }
    if (drops) {
      for (int c = 0; c < channels; c++) {
        for (int p = 0, i = kept[c], o = at + c; p < pixels; p++, i += stored, o += channels) {
          into[o] = row[i];
        }
      }
    }
    if (whiteIsZero) {
      for (int p = 0, o = at; p < pixels; p++, o += channels) {
        into[o] = (byte) ~into[o];
      }
    }
  }

  /** As {@link #bytes} for 16-bit samples. */
  void shorts(byte[] packed, int from, int pixels, short[] into, int at) {
    int count = pixels * stored;
    short[] row = into;
    int start = at;
    if (drops) {
      row = shortRow(count);
      start = 0;
    }
    ByteBuffer.wrap(packed, from, 2 * count).order(order).asShortBuffer().get(row, start, count);
    if (differences) {
      sum(row, start, start + count);
    }
    if (drops) {
      for (int c = 0; c < channels; c++) {
        for (int p = 0, i = kept[c], o = at + c; p < pixels; p++, i += stored, o += channels) {
          into[o] = row[i];
        }
      }
    }
    if (whiteIsZero) {
      for (int p = 0, o = at; p < pixels; p++, o += channels) {
        into[o] = (short) ~into[o];
      }
    }
  }

  private byte[] byteRow(int count) {
    byteRow = byteRow.length < count ? new byte[count] : byteRow;
    return byteRow;
  }

  private short[] shortRow(int count) {
    shortRow = shortRow.length < count ? new short[count] : shortRow;
    return shortRow;
  }

  /** Three sums side by side run three times as fast as one that waits for its own stores. */
  private void sum(short[] row, int start, int end) {
    if (stored != 3) {
      for (int i = start + stored; i < end; i++) {
        row[i] += row[i - stored];
      }
      return;
    }
    int red = 0;
    int green = 0;
    int blue = 0;
    for (int i = start; i < end; i += 3) {
      red += row[i];
      green += row[i + 1];
      blue += row[i + 2];
      row[i] = (short) red;
      row[i + 1] = (short) green;
      row[i + 2] = (short) blue;
    }
  }
}
