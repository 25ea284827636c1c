package org.duskply.engine.testing;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 of floats, for tests that pin the bits of a kernel. */
public final class Digests {
  private Digests() {}

  /** The hash of the bits, big-endian, −0 counted as 0; 64 hexadecimal digits. */
  public static String of(float[]... arrays) {
    try {
      MessageDigest hash = MessageDigest.getInstance("SHA-256");
      for (float[] array : arrays) {
        ByteBuffer bytes = ByteBuffer.allocate(Float.BYTES * array.length);
        for (float value : array) {
          bytes.putInt(Float.floatToIntBits(value + 0f));
        }
        hash.update(bytes.array());
      }
      return HexFormat.of().formatHex(hash.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new AssertionError(e);
    }
  }
}
