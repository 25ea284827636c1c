package org.duskply.engine.plan;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.duskply.engine.pixel.Region;

/**
 * Content keys of nodes over regions: a hash of what the nodes do and of their inputs' keys over
 * the regions they need. Where a step's footprint misses the region the key is that of the picture
 * below, so that an edit changes the keys of its own rows only. One instance serves one thread; it
 * remembers what it has computed.
 */
public final class Keys {
  private final Map<Node, Map<Region, Key>> known = new IdentityHashMap<>();

  /** The key of {@code node}'s pixels in {@code region}. */
  public Key of(Node node, Region region) {
    Deque<Node> chain = new ArrayDeque<>(); // a long recipe is a long chain: walked, not recursed
    Node at = passThrough(node, region);
    while (at instanceof Mix mix && !knows(at, region)) {
      chain.push(at);
      at = passThrough(mix.below(), region);
    }
    Key key = lookUp(at, region);
    while (!chain.isEmpty()) {
      key = lookUp(chain.pop(), region);
    }
    return key;
  }

  private static Node passThrough(Node node, Region region) {
    Node at = node;
    while (at instanceof Mix mix && mix.footprint(region).empty()) {
      at = mix.below();
    }
    return at;
  }

  private boolean knows(Node node, Region region) {
    Map<Region, Key> ofNode = known.get(node);
    return ofNode != null && ofNode.containsKey(region);
  }

  private Key lookUp(Node node, Region region) {
    Map<Region, Key> ofNode = known.computeIfAbsent(node, n -> new HashMap<>());
    Key key = ofNode.get(region);
    if (key == null) {
      key = compute(node, region);
      ofNode.put(region, key);
    }
    return key;
  }

  private Key compute(Node node, Region region) {
    KeyWriter writer = new KeyWriter();
    node.describe(writer);
    writer.region(region);
    List<Node> inputs = node.inputs();
    for (int i = 0; i < inputs.size(); i++) {
      Region part = node.needs(i, region);
      writer.region(part);
      if (!part.empty()) {
        writer.key(of(inputs.get(i), part));
      }
    }
    return writer.done();
  }
}
