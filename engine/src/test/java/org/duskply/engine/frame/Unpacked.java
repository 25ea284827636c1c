package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.Random;
import java.util.function.Function;

/** A strip in memory that an unpacker reads in pieces. */
final class Unpacked {
  private static final byte GUARD = 77;

  private final Unpacker unpacker;

  /** A strip that is there whole. */
  <U extends Unpacker> Unpacked(Function<ByteSource, U> unpackers, byte[] packed) {
    this.unpacker = unpackers.apply(new Strip(packed));
    unpacker.start(0, packed.length);
  }

  private record Strip(byte[] bytes) implements ByteSource {
    @Override
    public long size() {
      return bytes.length;
    }

    @Override
    public void read(long at, byte[] into, int from, int count) {
      System.arraycopy(bytes, (int) at, into, from, count);
    }

    @Override
    public FrameException fail(String predicate) {
      throw new AssertionError(predicate);
    }

    @Override
    public FrameException fail(String predicate, Throwable cause) {
      throw new AssertionError(predicate, cause);
    }
  }

  /** What reads it. */
  Unpacker unpacker() {
    return unpacker;
  }

  /** Reads pieces of any length to the end, and looks that nothing is written beyond them. */
  byte[] pieces(Random random, int longest) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int count;
    int asked;
    do {
      asked = 1 + random.nextInt(longest);
      int from = random.nextInt(9);
      byte[] piece = new byte[from + asked + 9];
      Arrays.fill(piece, GUARD);
      count = unpacker.read(piece, from, from + asked);
      for (int i = 0; i < piece.length; i++) {
        if ((i < from || i >= from + asked) && piece[i] != GUARD) {
          assertThat(i).as("written to").isBetween(from, from + asked - 1);
        }
      }
      out.write(piece, from, count);
    } while (count == asked);
    return out.toByteArray();
  }

  /** Says where bytes are other ones than expected; of their values there are too many to tell. */
  static void assertSame(byte[] bytes, byte[] expected) {
    int first = Arrays.mismatch(bytes, expected);
    assertThat(first)
        .as("first other byte of %d, expected %d", bytes.length, expected.length)
        .isEqualTo(-1);
  }

  /** Runs, repeats, slopes, noise of few and of many values. */
  static byte[] content(Random random) {
    byte[] plain = new byte[random.nextInt(60_000)];
    int kind = random.nextInt(5);
    int period = 1 + random.nextInt(400);
    for (int i = 0; i < plain.length; i++) {
      plain[i] =
          switch (kind) {
            case 0 -> (byte) (i / 5_000);
            case 1 -> (byte) (i < period ? random.nextInt() : plain[i - period]);
            case 2 -> (byte) (i * i / 9_000 + random.nextInt(3));
            case 3 -> (byte) random.nextInt(4);
            default -> (byte) random.nextInt();
          };
    }
    return plain;
  }
}
