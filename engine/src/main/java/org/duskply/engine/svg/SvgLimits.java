package org.duskply.engine.svg;

/** How large a drawing may be: far beyond what is drawn by hand, well below what would hurt. */
public final class SvgLimits {
  /** Bytes of a file; editors may keep the photograph itself inside as a layer. */
  public static final int FILE_BYTES = 64 << 20;

  /** Elements of a drawing, and elements that its uses repeat, each. */
  public static final int ELEMENTS = 100_000;

  /** Elements inside each other, those that a use repeats included. */
  public static final int DEPTH = 64;

  /** Attributes of one element. */
  public static final int ATTRIBUTES = 256;

  /** Characters of an outline's points or path, and of any other attribute that is read. */
  public static final int TEXT = 4_000_000;

  /**
   * Characters of attributes that are gone through for the shapes of one mask: each element's as
   * often as it is used.
   */
  public static final long READ = 64_000_000;

  /** Functions of one transform list. */
  public static final int TRANSFORMS = 256;

  /** Lines, curves and arcs of all shapes of a mask together. */
  public static final int SEGMENTS = 400_000;

  private SvgLimits() {}
}
