package org.duskply.engine.plan;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.duskply.engine.pixel.Region;

/**
 * Content keys of nodes over regions: a hash of what the nodes do and of their inputs' keys over
 * the regions they need. Where a step's footprint misses the region the key is that of the picture
 * below, so that an edit changes the keys of its own rows only.
 *
 * <p>A node that several others read is looked at once, over the hull of what they need of it: were
 * it looked at over each region, masks that read the picture below in regions of their own would
 * multiply them from step to step. One instance serves one thread; it remembers the order of
 * graphs.
 */
public final class Keys {
  private final Map<Node, List<Node>> orders = new IdentityHashMap<>();

  /** The key of {@code node}'s pixels in {@code region}. */
  public Key of(Node node, Region region) {
    List<Node> inputsFirst = orders.computeIfAbsent(node, Keys::order);
    Map<Node, Region> needed = needed(inputsFirst, node, region);
    Map<Node, Key> keys = new IdentityHashMap<>();
    for (Node next : inputsFirst) {
      Region part = needed.get(next);
      if (part != null) {
        keys.put(next, key(next, part, keys));
      }
    }
    return known(keys, node);
  }

  private static List<Node> order(Node root) {
    return Plan.topological(List.of(root), Collections.newSetFromMap(new IdentityHashMap<>()));
  }

  /** What is needed of each node; those of which nothing is needed are absent. */
  private static Map<Node, Region> needed(List<Node> inputsFirst, Node root, Region region) {
    Map<Node, Region> needed = new IdentityHashMap<>();
    needed.put(root, region);
    for (int i = inputsFirst.size() - 1; i >= 0; i--) {
      Node node = inputsFirst.get(i);
      Region out = needed.get(node);
      for (int input = 0; out != null && input < node.inputs().size(); input++) {
        Region part = node.needs(input, out);
        if (!part.empty()) {
          needed.merge(node.inputs().get(input), part, Region::hull);
        }
      }
    }
    return needed;
  }

  private static Key key(Node node, Region out, Map<Node, Key> keys) {
    if (node instanceof Mix mix && mix.footprint(out).empty()) {
      return known(keys, mix.below());
    }
    KeyWriter writer = new KeyWriter();
    node.describe(writer);
    writer.region(out);
    for (int input = 0; input < node.inputs().size(); input++) {
      Region part = node.needs(input, out);
      writer.region(part);
      if (!part.empty()) {
        writer.key(known(keys, node.inputs().get(input)));
      }
    }
    return writer.done();
  }

  private static Key known(Map<Node, Key> keys, Node node) {
    Key key = keys.get(node);
    if (key == null) {
      throw new IllegalStateException("A node is needed that no other asked for: " + node);
    }
    return key;
  }
}
