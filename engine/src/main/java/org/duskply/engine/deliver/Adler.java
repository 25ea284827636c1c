package org.duskply.engine.deliver;

/**
 * The checksum of zlib (RFC 1950 section 2.2) of two pieces of data put together, from the
 * checksums of each. With m = 65521: s₁ = 1 + Σ bytes and s₂ = Σ of all the s₁ so far, both modulo
 * m; so the second piece adds its s₁ − 1 to s₁, and to s₂ its own s₂ and, for each of its bytes,
 * the s₁ − 1 that stood before it.
 */
final class Adler {
  private static final long MODULUS = 65521;

  /** Of no data. */
  static final int EMPTY = 1;

  private Adler() {}

  /**
   * The checksum of both.
   *
   * @param length bytes of the second piece
   */
  static int combine(int first, int second, long length) {
    long before = (first & 0xFFFF) + MODULUS - 1;
    long s1 = (before + (second & 0xFFFF)) % MODULUS;
    long s2 = ((first >>> 16) + (second >>> 16) + before % MODULUS * (length % MODULUS)) % MODULUS;
    return (int) (s2 << 16 | s1);
  }
}
