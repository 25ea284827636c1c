package org.duskply.recipe;

/**
 * How large a recipe may be. Recipes come from strangers: each limit is far beyond what a
 * photographer writes and well below what would exhaust a machine.
 */
public final class Limits {
  /** Bytes of a recipe file. */
  public static final int FILE_BYTES = 4 << 20;

  /** Keys, values and brackets of a recipe, all together. */
  public static final int VALUES = 400_000;

  /** Brackets and indented blocks inside each other. */
  public static final int DEPTH = 64;

  /** Members of one list or keys of one mapping. */
  public static final int MEMBERS = 10_000;

  /** Steps of a recipe, those in groups included. */
  public static final int STEPS = 10_000;

  /** Groups inside each other. */
  public static final int GROUP_DEPTH = 16;

  /** Alternates of a recipe. */
  public static final int ALTERNATES = 64;

  /** Deliverables of a recipe; each may be a file for every alternate. */
  public static final int DELIVERABLES = 64;

  /** Masks that use each other in a chain. */
  public static final int MASK_DEPTH = 32;

  /** Corners of one polygon. */
  public static final int POINTS = 10_000;

  /** Points of one curve. */
  public static final int CURVE_POINTS = 256;

  /** Adjustments of one list. */
  public static final int ADJUSTMENTS = 100;

  /**
   * Adjustments of a recipe, those that alternates set included. The tables of one take
   * milliseconds to prepare, of the costliest thirty.
   */
  public static final int ADJUSTMENTS_IN_ALL = 2_000;

  /** Characters of one text, path data and point lists included. */
  public static final int TEXT = 262_144;

  /**
   * Characters of one line of YAML: the longest text and its key. The parser's work grows with the
   * square of a word's length, so that a line of 4 million would take it a quarter of a minute.
   */
  public static final int LINE = 300_000;

  /** Characters of a title. */
  public static final int TITLE = 1_000;

  /** Characters of a caption and other prose that travels in a delivered file. */
  public static final int CAPTION = 2_000;

  /** Keywords of a delivered file. */
  public static final int KEYWORDS = 200;

  /** Characters of one keyword, as many as an IPTC record has place for. */
  public static final int KEYWORD = 64;

  /** Characters of a file's path. */
  public static final int FILE_PATH = 1_000;

  /** Characters of a key. */
  public static final int KEY = 256;

  /** Characters of a number. */
  public static final int NUMBER = 100;

  /** Pixels of a picture's side. */
  public static final int SIDE = 100_000;

  /** Distance of a point from the grid's origin, in pixels. */
  public static final int COORDINATE = 1_000_000;

  /** Problems that are listed before the rest is only counted. */
  public static final int PROBLEMS = 100;

  private Limits() {}
}
