package org.duskply.engine.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/** Bits of pictures, with −0 counted as 0. */
public final class PictureBits {
  private PictureBits() {}

  /**
   * Fails unless {@code actual} holds the very bits that {@code whole} holds in its area; says
   * where the first differ.
   */
  public static void same(Planes whole, Planes actual, String what) {
    Region area = actual.area();
    assertThat(whole.area().contains(area)).isTrue();
    for (int p = 0; p < actual.count(); p++) {
      for (int y = area.top(); y < area.bottom(); y++) {
        for (int x = area.left(); x < area.right(); x++) {
          float a = whole.plane(p)[whole.at(x, y)];
          float b = actual.plane(p)[actual.at(x, y)];
          if (bits(a) != bits(b)) {
            throw new AssertionError(
                what + ": plane " + p + " at " + x + "," + y + ": " + a + " became " + b);
          }
        }
      }
    }
  }

  /** SHA-256 of all samples, plane after plane. */
  public static String sha256(Planes planes) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      digest.update(planes.area().toString().getBytes(StandardCharsets.UTF_8));
      for (int p = 0; p < planes.count(); p++) {
        ByteBuffer bytes = ByteBuffer.allocate(4 * planes.plane(p).length);
        for (float v : planes.plane(p)) {
          bytes.putInt(bits(v));
        }
        digest.update(bytes.array());
      }
      return HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private static int bits(float v) {
    return Float.floatToIntBits(v + 0f);
  }
}
