package org.duskply.engine.plan;

/** Where nodes stand in a plan. */
interface Index {
  /** Index of a frame among the plan's frames. */
  int frame(FrameNode frame);

  /** Index of a finished node among the plan's stages. */
  int stage(Node node);
}
