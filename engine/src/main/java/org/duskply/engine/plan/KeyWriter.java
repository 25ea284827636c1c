package org.duskply.engine.plan;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import org.duskply.engine.pixel.Region;

/**
 * Gathers what a content key stands for, unambiguously: every entry is written with its kind and
 * length.
 */
public final class KeyWriter {
  private final MessageDigest digest = sha256();
  private final ByteBuffer eight = ByteBuffer.allocate(8);

  /** Adds a word. */
  public KeyWriter word(String word) {
    byte[] bytes = word.getBytes(StandardCharsets.UTF_8);
    number(bytes.length);
    digest.update(bytes);
    return this;
  }

  /** Adds a whole number. */
  public KeyWriter number(long value) {
    digest.update((byte) 'n');
    digest.update(eight.putLong(0, value).array());
    return this;
  }

  /** Adds a number; −0 counts as 0. */
  public KeyWriter number(double value) {
    digest.update((byte) 'd');
    digest.update(eight.putLong(0, Double.doubleToLongBits(value + 0.0)).array());
    return this;
  }

  /** Adds a region. */
  public KeyWriter region(Region r) {
    return number(r.left()).number(r.top()).number(r.right()).number(r.bottom());
  }

  /** Adds another key. */
  public KeyWriter key(Key key) {
    digest.update((byte) 'k');
    digest.update(key.bytes());
    return this;
  }

  /** The key of all that was added. */
  public Key done() {
    return new Key(digest.digest());
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java platform has SHA-256", e);
    }
  }
}
