package org.duskply.engine.plan;

/** What may be left out of the work, each on its own. None changes a bit of the picture. */
public enum Rule {
  /** Point nodes run one after the other on a chunk; without, every node is a stage. */
  FUSE,

  /** In a fused run, a step runs only where its mask shows; without, wherever the run does. */
  SPANS,

  /** Of a unit of a frame, only the pixels that are needed are decoded; without, all of it. */
  PARTS,

  /**
   * What is made from nothing but numbers, such as an outline, is made by the one that softens it,
   * for each band anew; without, it is finished first, and its bands wait for those that read them.
   */
  INLINE,

  /** Where a mask is known to be of one value, it is not made; without, it is. */
  KNOWN
}
