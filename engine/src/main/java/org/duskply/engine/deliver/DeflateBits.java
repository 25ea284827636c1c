package org.duskply.engine.deliver;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.Arrays;

/**
 * Bits put into bytes as deflate wants them, the lowest first (RFC 1951 section 3.1.1). Room is
 * asked for beforehand. For one thread.
 */
final class DeflateBits {
  /** Most bits of a word that {@link #words} takes: four of them and what waits fit into 64. */
  static final int LONGEST = 14;

  private static final VarHandle LONGS =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

  private byte[] out = new byte[0];
  private int at;
  private long waiting;
  private int count; // of bits that wait, below 8 between two calls

  /** Makes room for so many bytes more. */
  void room(int bytes) {
    int needed = at + bytes + Long.BYTES;
    if (out.length < needed) {
      out = Arrays.copyOf(out, needed);
    }
  }

  /** Puts the low {@code length} bits of a value, at most 32, the others being 0. */
  void put(int value, int length) {
    waiting |= (value & 0xFFFF_FFFFL) << count;
    count += length;
    flush();
  }

  /** Puts the word of a symbol. */
  void word(HuffmanCode code, int symbol) {
    put(code.words()[symbol] & 0xFFFF, code.length(symbol));
  }

  /** Puts the words of bytes {@code from} up to {@code to}, none longer than {@link #LONGEST}. */
  void words(HuffmanCode code, byte[] bytes, int from, int to) {
    int[] words = code.words();
    byte[] out = this.out;
    long waiting = this.waiting;
    int count = this.count;
    int at = this.at;
    int i = from;
    for (; i < to - 3; i += 4) {
      int a = words[bytes[i] & 0xFF];
      waiting |= (long) (a & 0xFFFF) << count;
      count += a >>> 16;
      int b = words[bytes[i + 1] & 0xFF];
      waiting |= (long) (b & 0xFFFF) << count;
      count += b >>> 16;
      int c = words[bytes[i + 2] & 0xFF];
      waiting |= (long) (c & 0xFFFF) << count;
      count += c >>> 16;
      int d = words[bytes[i + 3] & 0xFF];
      waiting |= (long) (d & 0xFFFF) << count;
      count += d >>> 16;
      LONGS.set(out, at, waiting);
      at += count >>> 3;
      waiting >>>= count & 56;
      count &= 7;
    }
    this.waiting = waiting;
    this.count = count;
    this.at = at;
    for (; i < to; i++) {
      word(code, bytes[i] & 0xFF);
    }
  }

  /** Goes on at the next whole byte. */
  void align() {
    put(0, -count & 7);
  }

  /** Puts whole bytes; after {@link #align}. */
  void bytes(byte[] from, int start, int length) {
    System.arraycopy(from, start, out, at, length);
    at += length;
  }

  /** Hands the whole bytes over. */
  void moveTo(Growing to) {
    to.add(out, 0, at);
    at = 0;
  }

  private void flush() {
    LONGS.set(out, at, waiting);
    at += count >>> 3;
    waiting >>>= count & 56;
    count &= 7;
  }
}
