package org.duskply.engine.plan;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import org.duskply.engine.pixel.Region;

/**
 * Gathers what a content key stands for, unambiguously: every entry is written with its kind and
 * length. For one thread; may be used for one key after the other.
 */
public final class KeyWriter {
  private final MessageDigest digest = sha256();
  private final ByteBuffer waiting = ByteBuffer.allocate(512);

  /** Adds a word. */
  public KeyWriter word(String word) {
    byte[] bytes = word.getBytes(StandardCharsets.UTF_8);
    number(bytes.length);
    flush();
    digest.update(bytes);
    return this;
  }

  /** Adds a whole number. */
  public KeyWriter number(long value) {
    room(1 + Long.BYTES).put((byte) 'n').putLong(value);
    return this;
  }

  /** Adds a number; −0 counts as 0. */
  public KeyWriter number(double value) {
    room(1 + Long.BYTES).put((byte) 'd').putLong(Double.doubleToLongBits(value + 0.0));
    return this;
  }

  /** Adds a region. */
  public KeyWriter region(Region r) {
    return number(r.left()).number(r.top()).number(r.right()).number(r.bottom());
  }

  /** Adds another key. */
  public KeyWriter key(Key key) {
    room(1 + key.bytes().length).put((byte) 'k').put(key.bytes());
    return this;
  }

  /** The key of all that was added; whatever is added from now on belongs to another. */
  public Key done() {
    flush();
    return new Key(digest.digest());
  }

  /** Small entries are gathered: the digest takes one long piece faster than many short ones. */
  private ByteBuffer room(int bytes) {
    if (waiting.remaining() < bytes) {
      flush();
    }
    return waiting;
  }

  private void flush() {
    digest.update(waiting.array(), 0, waiting.position());
    waiting.clear();
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java platform has SHA-256", e);
    }
  }
}
