package org.duskply.engine.frame;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Samples as plain values and as hashes. */
final class SamplesText {
  private SamplesText() {}

  static double value(Samples s, int x, int y, int channel) {
    int at = s.at(x, y) + channel;
    return switch (s.kind()) {
      case BYTES -> s.bytes()[at] & 0xff;
      case SHORTS -> s.shorts()[at] & 0xffff;
      case FLOATS -> s.floats()[at];
    };
  }

  static String hash(Samples s) {
    ByteBuffer bytes;
    switch (s.kind()) {
      case BYTES -> bytes = ByteBuffer.wrap(s.bytes());
      case SHORTS -> {
        bytes = ByteBuffer.allocate(2 * s.shorts().length);
        bytes.asShortBuffer().put(s.shorts());
      }
      default -> {
        bytes = ByteBuffer.allocate(4 * s.floats().length);
        bytes.asFloatBuffer().put(s.floats());
      }
    }
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      digest.update(bytes);
      return HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new AssertionError(e);
    }
  }

  static void spoil(Samples s) {
    switch (s.kind()) {
      case BYTES -> java.util.Arrays.fill(s.bytes(), (byte) 77);
      case SHORTS -> java.util.Arrays.fill(s.shorts(), (short) 77);
      case FLOATS -> java.util.Arrays.fill(s.floats(), 77f);
    }
  }
}
