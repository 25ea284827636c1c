package org.duskply.engine.frame;

import java.util.concurrent.atomic.AtomicLong;

/**
 * What was read from frames' files: the proof that cost follows what the masks show. Thread-safe.
 */
public final class ReadCounters {
  private final AtomicLong units = new AtomicLong();
  private final AtomicLong bytes = new AtomicLong();

  /** Units that readers decoded. */
  public long units() {
    return units.get();
  }

  /** Bytes that were read from files, headers included. */
  public long bytes() {
    return bytes.get();
  }

  void countUnit() {
    units.incrementAndGet();
  }

  void countBytes(long more) {
    bytes.addAndGet(more);
  }
}
