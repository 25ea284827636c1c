package org.duskply.engine.mask;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Set;
import org.duskply.engine.plan.Node;

/**
 * A mask without inputs that is defined on the whole plane and not on the canvas alone: outlines
 * that run over the border, gradients, everywhere. A mask made of such masks alone is boundless
 * too; a frame or a picture never is, nor is a mask that reads one.
 */
interface Boundless {
  /** Whether a mask has values of its own beyond the canvas. */
  static boolean is(Node mask) {
    return is(mask, Collections.newSetFromMap(new IdentityHashMap<>()));
  }

  /** Looks at each member once: masks may share members many times over. */
  private static boolean is(Node mask, Set<Node> seen) {
    if (!seen.add(mask)) {
      return true; // else the first look would have ended the search
    }
    if (mask.planes() != 1) {
      return false;
    }
    return mask.inputs().isEmpty()
        ? mask instanceof Boundless
        : mask.inputs().stream().allMatch(input -> is(input, seen));
  }
}
