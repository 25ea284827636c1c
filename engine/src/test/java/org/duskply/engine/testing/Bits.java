package org.duskply.engine.testing;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The bits of samples as one hash, for promises that hold to the last bit. */
public final class Bits {
  private Bits() {}

  /** SHA-256 of the samples in order, big-endian; both zeros count as one. */
  public static String sha256(float[]... planes) {
    MessageDigest digest = digest();
    for (float[] plane : planes) {
      ByteBuffer bytes = ByteBuffer.allocate(Float.BYTES * plane.length);
      for (float sample : plane) {
        bytes.putInt(Float.floatToIntBits(sample + 0f));
      }
      digest.update(bytes.array());
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new AssertionError("every Java has SHA-256", e);
    }
  }
}
