package org.duskply.engine.mask;

import org.duskply.engine.plan.Node;

/**
 * A mask without inputs that is defined on the whole plane and not on the canvas alone: outlines
 * that run over the border, gradients, everywhere. A mask made of such masks alone is boundless
 * too; a frame or a picture never is, nor is a mask that reads one.
 */
interface Boundless {
  /** Whether a mask has values of its own beyond the canvas. */
  static boolean is(Node mask) {
    if (mask.planes() != 1) {
      return false;
    }
    return mask.inputs().isEmpty()
        ? mask instanceof Boundless
        : mask.inputs().stream().allMatch(Boundless::is);
  }
}
