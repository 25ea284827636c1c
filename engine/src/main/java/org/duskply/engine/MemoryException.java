package org.duskply.engine;

/** A rendering that cannot be done with the memory it may use; nothing has been started. */
public final class MemoryException extends DuskplyException {
  private static final long serialVersionUID = 1;
  private static final int KILOBYTE = 10;
  private static final int MEGABYTE = 20;
  private static final long FEW_MEGABYTES = 10L << MEGABYTE;

  private final long needed;
  private final long allowed;

  public MemoryException(long needed, long allowed) {
    super(
        "This picture needs at least "
            + atLeast(needed)
            + " of working memory, and "
            + atMost(allowed)
            + " may be used. Allow more with --memory, or Engine.builder().memory(…), and give Java"
            + " a larger heap with -Xmx.");
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

  /** Rounded up: what is said to be needed will do. */
  private static String atLeast(long bytes) {
    int shift = shift(bytes);
    return ((bytes + (1L << shift) - 1) >> shift) + unit(shift);
  }

  /** Rounded down, so that it never looks as if it would do. */
  private static String atMost(long bytes) {
    int shift = shift(bytes);
    return (bytes >> shift) + unit(shift);
  }

  private static int shift(long bytes) {
    return bytes >= FEW_MEGABYTES ? MEGABYTE : KILOBYTE;
  }

  private static String unit(int shift) {
    return shift == MEGABYTE ? " MB" : " kB";
  }
}
