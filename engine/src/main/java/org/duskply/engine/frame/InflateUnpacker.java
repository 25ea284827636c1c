package org.duskply.engine.frame;

import org.jspecify.annotations.Nullable;

/**
 * Inflates each run by what suits it, which its first block tells: by zlib, or by our own decoder
 * if hardly anything in it repeats. Both give the same bytes.
 */
final class InflateUnpacker implements DeflateUnpacker {
  /** What it holds beside its input, and zlib's beside its own. */
  static final int BYTES = NoiseInflater.BYTES + ZlibInflater.NATIVE_BYTES;

  /** Share of symbols that repeat from which on zlib is as fast; measured. */
  private static final double MOST_REPEATS = 0.25;

  private final PackedInput in;
  private final NoiseInflater own;
  private @Nullable ZlibInflater zlib;
  private DeflateUnpacker chosen;

  InflateUnpacker(ByteSource file) {
    this.in = new PackedInput(file);
    this.own = new NoiseInflater(in);
    this.chosen = own;
  }

  @Override
  public void start(long offset, long length) {
    own.start(offset, length);
    if (own.repeats() <= MOST_REPEATS) {
      chosen = own;
      return;
    }
    ZlibInflater other = zlib == null ? new ZlibInflater(in) : zlib;
    other.start(offset, length);
    zlib = other;
    chosen = other;
  }

  @Override
  public int read(byte[] into, int from, int to) {
    return chosen.read(into, from, to);
  }

  @Override
  public boolean damaged() {
    return chosen.damaged();
  }

  @Override
  public void close() {
    if (zlib != null) {
      zlib.close();
    }
  }
}
