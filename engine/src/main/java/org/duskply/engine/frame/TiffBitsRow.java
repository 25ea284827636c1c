package org.duskply.engine.frame;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Rows of whole numbers of any depth up to 32 bits, and palettes. Depths that are not whole bytes
 * are packed from the highest bit on, each row beginning with a new byte; whole bytes follow the
 * file's byte order. Samples of more than 16 bits are rounded to 16: {@code v/(2^bits − 1)} in
 * 65,535ths.
 */
final class TiffBitsRow implements TiffRow {
  private static final int FULL = 65535;

  private final ByteSource file;
  private final TiffKind kind;
  private final RowLayout layout;
  private final ByteOrder order;
  private final int bits;
  private final int most;
  private final boolean differences;
  private final int turned;
  private int[] codes = new int[0];

  TiffBitsRow(
      ByteSource file, TiffPicture picture, TiffKind kind, RowLayout layout, ByteOrder order) {
    this.file = file;
    this.kind = kind;
    this.layout = layout;
    this.order = order;
    this.bits = picture.bits();
    this.most = (int) ((1L << bits) - 1);
    this.differences = picture.predicted() == 2;
    boolean whiteIsZero = picture.photometric() == TiffPicture.MIN_IS_WHITE && layout.first() == 0;
    this.turned = whiteIsZero ? (int) kind.fullScale() : 0;
  }

  @Override
  public void row(byte[] packed, int from, int left, int pixels, Object into, int at) {
    int count = (left + pixels) * layout.stored();
    codes = codes.length < count ? new int[count] : codes;
    unpack(packed, from, count);
    if (differences) {
      for (int i = layout.stored(); i < count; i++) {
        codes[i] = codes[i] + codes[i - layout.stored()] & most;
      }
    }
    if (kind.palette().length > 0) {
      expand(left, pixels, (short[]) into, at);
    } else {
      keep(left, pixels, into, at);
    }
  }

  private void unpack(byte[] packed, int from, int count) {
    if (bits % 8 == 0) {
      whole(ByteBuffer.wrap(packed).order(order), from, count);
      return;
    }
    long held = 0;
    int holds = 0;
    for (int i = 0, at = from; i < count; i++) {
      while (holds < bits) {
        held = held << 8 | packed[at++] & 0xff;
        holds += 8;
      }
      holds -= bits;
      codes[i] = (int) (held >>> holds) & most;
    }
  }

  private void whole(ByteBuffer in, int from, int count) {
    boolean bigEnd = order == ByteOrder.BIG_ENDIAN;
    for (int i = 0, at = from; i < count; i++, at += bits / 8) {
      codes[i] =
          switch (bits) {
            case 8 -> in.get(at) & 0xff;
            case 16 -> in.getShort(at) & 0xffff;
            case 24 ->
                (in.get(bigEnd ? at : at + 2) & 0xff) << 16
                    | (in.get(at + 1) & 0xff) << 8
                    | in.get(bigEnd ? at + 2 : at) & 0xff;
            default -> in.getInt(at);
          };
    }
  }

  private void keep(int left, int pixels, Object into, int at) {
    for (int k = 0; k < layout.kept().length; k++) {
      int i = left * layout.stored() + layout.kept()[k];
      int o = at + layout.first() + k;
      int flip = k == 0 ? turned : 0;
      if (into instanceof byte[] bytes) {
        for (int p = 0; p < pixels; p++, i += layout.stored(), o += layout.channels()) {
          bytes[o] = (byte) (codes[i] ^ flip);
        }
      } else {
        short[] shorts = (short[]) into;
        for (int p = 0; p < pixels; p++, i += layout.stored(), o += layout.channels()) {
          shorts[o] = (short) ((bits > 16 ? rounded(codes[i]) : codes[i]) ^ flip);
        }
      }
    }
  }

  private int rounded(int code) {
    long full = most & 0xffffffffL;
    return (int) (((code & full) * FULL + full / 2) / full);
  }

  private void expand(int left, int pixels, short[] into, int at) {
    long[] palette = kind.palette();
    int entries = palette.length / 3;
    int alphaAt = kind.channels() > 3 ? layout.kept()[1] : -1;
    int i = left * layout.stored();
    for (int p = 0, o = at; p < pixels; p++, i += layout.stored(), o += kind.channels()) {
      int index = codes[i];
      if (index >= entries) {
        throw file.fail("is damaged: a pixel has a colour that is not in its palette");
      }
      for (int c = 0; c < 3; c++) {
        into[o + c] = (short) palette[c * entries + index];
      }
      if (alphaAt >= 0) {
        into[o + 3] = (short) ((codes[i + alphaAt] * FULL + most / 2) / most);
      }
    }
  }
}
