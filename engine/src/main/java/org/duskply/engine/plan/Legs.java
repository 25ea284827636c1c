package org.duskply.engine.plan;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;

/**
 * Cuts a long run of steps into <em>legs</em>. A run over a band needs all that its steps read at
 * the same time; where a picture on the way is finished first, what was read for it is let go
 * before the next leg's is fetched. So the memory that a band takes does not grow with the number
 * of steps.
 */
final class Legs {
  private final Set<Node> leaves;
  private final Set<Node> unmasked;
  private final int most;
  private final Set<Node> ends = Collections.newSetFromMap(new IdentityHashMap<>());

  private Legs(Set<Node> leaves, Set<Node> unmasked, int most) {
    this.leaves = leaves;
    this.unmasked = unmasked;
    this.most = most;
  }

  /**
   * Which pictures on the way are finished, so that about {@code most} leaves lie between one and
   * the next.
   *
   * @param order all nodes, inputs first
   * @param most frames and stages that one leg should read
   * @param staged the stages
   * @return the pictures that are to be stages beside them
   */
  static Set<Node> ends(List<Node> roots, List<Node> order, int most, Set<Node> staged) {
    Legs legs = new Legs(leaves(roots, order, staged), unmasked(roots, order, staged), most);
    int start = 0;
    for (int i = 0; i < order.size(); i++) {
      if (order.get(i) instanceof Mix mix && staged.contains(mix)) { // finished anyway
        legs.cut(order.subList(start, i));
        start = i;
      }
    }
    legs.cut(order.subList(start, order.size()));
    return legs.ends;
  }

  /** Cuts the nodes between two finished pictures, the first of these included. */
  private void cut(List<Node> run) {
    long all = run.stream().filter(leaves::contains).count();
    long legs = (all - 1) / most + 1;
    long seen = 0;
    long leg = 1;
    for (Node node : run) {
      if (leaves.contains(node)) {
        seen++;
      } else if (node instanceof Mix && unmasked.contains(node)) {
        if (seen < all && seen * legs >= all * leg) {
          ends.add(node);
          leg = seen * legs / all + 1;
        }
      }
    }
  }

  /** What runs read: frames, and stages that are not what is wanted in the end. */
  private static Set<Node> leaves(List<Node> roots, List<Node> order, Set<Node> staged) {
    Set<Node> leaves = Collections.newSetFromMap(new IdentityHashMap<>());
    order.stream().filter(n -> n instanceof FrameNode || staged.contains(n)).forEach(leaves::add);
    roots.forEach(leaves::remove);
    return leaves;
  }

  /**
   * What is made wherever its stage is. The steps of a masked group are not: they run where its
   * mask shows, and would run in all of the mask's rectangle as a stage.
   */
  private static Set<Node> unmasked(List<Node> roots, List<Node> order, Set<Node> staged) {
    Set<Node> unmasked = Collections.newSetFromMap(new IdentityHashMap<>());
    unmasked.addAll(roots);
    unmasked.addAll(staged);
    for (int i = order.size() - 1; i >= 0; i--) { // users come before what they use
      Node node = order.get(i);
      if (unmasked.contains(node)) {
        boolean masked = node instanceof Mix mix && mix.mask() != null;
        unmasked.addAll(masked ? node.inputs().subList(0, 1) : node.inputs());
      }
    }
    return unmasked;
  }
}
