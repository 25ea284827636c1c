package org.duskply.engine.mask;

import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
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
    Set<Node> met = Collections.newSetFromMap(new IdentityHashMap<>());
    Deque<Node> waiting = new ArrayDeque<>(List.of(mask));
    while (!waiting.isEmpty()) {
      Node node = waiting.pop();
      if (!met.add(node)) {
        continue; // Masks may share members many times over.
      }
      boolean leaf = node.inputs().isEmpty();
      if (node.planes() != 1 || leaf && !(node instanceof Boundless)) {
        return false;
      }
      waiting.addAll(node.inputs());
    }
    return true;
  }
}
