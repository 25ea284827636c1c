package org.duskply.engine.plan;

/**
 * How the work is cut up. Never changes a bit of the picture.
 *
 * @param bandRows rows of a band, at least 1
 * @param chunkWidth pixels of a row carried through a fused run before the next, at least 1
 * @param optimise whether point nodes are fused and steps run only where their masks show; without,
 *     every node is a stage
 */
public record PlanSettings(int bandRows, int chunkWidth, boolean optimise) {
  /** What is used where nobody says otherwise. */
  public static final PlanSettings DEFAULT = new PlanSettings(64, 512, true);
}
