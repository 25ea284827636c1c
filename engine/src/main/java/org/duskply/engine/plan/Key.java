package org.duskply.engine.plan;

import java.util.Arrays;
import java.util.HexFormat;

/** A content key: equal keys stand for equal pixels. */
public final class Key {
  private final byte[] bytes;
  private final int hash;

  Key(byte[] bytes) {
    this.bytes = bytes;
    this.hash = Arrays.hashCode(bytes);
  }

  byte[] bytes() {
    return bytes;
  }

  @Override
  public boolean equals(Object o) {
    return o instanceof Key k && Arrays.equals(bytes, k.bytes);
  }

  @Override
  public int hashCode() {
    return hash;
  }

  @Override
  public String toString() {
    return HexFormat.of().formatHex(bytes);
  }
}
