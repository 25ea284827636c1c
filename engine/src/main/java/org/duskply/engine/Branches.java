package org.duskply.engine;

import java.util.Collection;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.duskply.engine.plan.Mix;
import org.duskply.engine.plan.Node;

/**
 * Where pictures part that are made in one go. Each is a chain down to the base, and alternates of
 * one recipe have the nodes in common that they agree on.
 */
final class Branches {
  private Branches() {}

  /**
   * The wanted pictures, and those below them from which several go on: as roots of one plan they
   * are made once for all.
   */
  static List<Node> roots(Collection<Node> wanted) {
    Set<Node> seen = Collections.newSetFromMap(new IdentityHashMap<>());
    Set<Node> all = new LinkedHashSet<>(wanted);
    for (Node root : wanted) {
      Node at = root;
      while (seen.add(at) && !at.inputs().isEmpty()) {
        at = at.inputs().get(0);
      }
      if (at instanceof Mix && at != root) {
        all.add(at);
      }
    }
    return List.copyOf(all);
  }
}
