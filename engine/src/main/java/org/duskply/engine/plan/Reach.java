package org.duskply.engine.plan;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * How far a picture looks: the most pixels on any side that all area operations on one way down the
 * graph read around a pixel, added up. It bounds how many rows of a picture are held at once. One
 * instance serves one thread; it remembers what it has added up.
 */
public final class Reach {
  /** The most that is allowed. */
  public static final int MOST = 8_192;

  private final Map<Node, Integer> known = new IdentityHashMap<>();
  private final Set<Node> seen = Collections.newSetFromMap(new IdentityHashMap<>());

  /** The reach of {@code node}. */
  public int of(Node node) {
    for (Node next : Plan.topological(List.of(node), seen)) {
      int below = 0;
      for (Node input : next.inputs()) {
        below = Math.max(below, known.getOrDefault(input, 0));
      }
      int own = next instanceof AreaNode area ? area.reach() : 0;
      known.put(next, Math.min(Integer.MAX_VALUE / 2, below + own));
    }
    return known.getOrDefault(node, 0);
  }
}
