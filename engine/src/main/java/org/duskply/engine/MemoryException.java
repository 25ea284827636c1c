package org.duskply.engine;

/** A rendering that cannot be done with the memory it may use; nothing has been started. */
public final class MemoryException extends DuskplyException {
  private static final long serialVersionUID = 1;
  private final long needed;
  private final long allowed;

  public MemoryException(long needed, long allowed) {
    super(
        "This picture needs at least "
            + megabytes(needed)
            + " MB of working memory, and "
            + megabytes(allowed)
            + " MB may be used. Allow more with --memory, or Engine.builder().memory(…), and give Java a larger heap with -Xmx.");
    this.needed = needed;
    this.allowed = allowed;
  }

  /** Fewest bytes with which the picture can be made. */
  public long needed() {
    return needed;
  }

  /** Bytes that may be used. */
  public long allowed() {
    return allowed;
  }

  private static long megabytes(long bytes) {
    return (bytes + (1L << 20) - 1) >> 20;
  }
}
