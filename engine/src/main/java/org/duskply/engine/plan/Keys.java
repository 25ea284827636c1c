package org.duskply.engine.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.duskply.engine.pixel.Region;
import org.jspecify.annotations.Nullable;

/**
 * Content keys of nodes, band by band: a hash of what a node does and of its inputs' keys in the
 * bands that it reads. Two nodes of one key have the same pixels wherever both were asked for, in
 * whatever recipes they stand. Where a step's footprint misses what is asked of a band, its key
 * there is that of the picture below, so that an edit changes the keys of its own bands only.
 *
 * <p>One walk from the pictures back finds what is asked of each node in each band, the hull of all
 * who read it; one walk forth makes the keys. Each node is looked at once a band, however many read
 * it, and described once. For one thread.
 */
public final class Keys {
  private final Bands bands;
  private final List<Node> inputsFirst;
  private final Map<Node, Integer> index = new IdentityHashMap<>();
  private final List<TreeMap<Integer, Region>> asked = new ArrayList<>();
  private final List<Map<Integer, Key>> keys = new ArrayList<>();
  private final KeyWriter writer = new KeyWriter();

  /**
   * The keys of all that makes some parts of some pictures.
   *
   * @param pictures what is asked of each; compared by identity
   */
  public Keys(IdentityHashMap<Node, Region> pictures, Bands bands) {
    this.bands = bands;
    this.inputsFirst =
        Plan.topological(
            List.copyOf(pictures.keySet()), Collections.newSetFromMap(new IdentityHashMap<>()));
    for (Node node : inputsFirst) {
      index.put(node, asked.size());
      asked.add(new TreeMap<>());
    }
    pictures.forEach(this::ask);
    for (int i = inputsFirst.size() - 1; i >= 0; i--) {
      askInputs(inputsFirst.get(i), asked.get(i));
    }
    for (int i = 0; i < inputsFirst.size(); i++) {
      keys.add(keys(inputsFirst.get(i), asked.get(i)));
    }
  }

  /**
   * The key of {@code node}'s pixels in {@code part} of a band.
   *
   * @return absent where {@code part} reaches beyond what was asked of the node
   */
  public @Nullable Key of(Node node, int band, Region part) {
    Integer i = index.get(node);
    Region known = i == null ? null : asked.get(i).get(band);
    return i == null || known == null || !known.contains(part) ? null : keys.get(i).get(band);
  }

  /** What is asked of a node in each band; nothing for a node that makes none of the pictures. */
  public Map<Integer, Region> asked(Node node) {
    Integer i = index.get(node);
    return i == null ? Map.of() : Collections.unmodifiableMap(asked.get(i));
  }

  private void askInputs(Node node, Map<Integer, Region> ofNode) {
    for (Region out : ofNode.values()) {
      for (int input = 0; input < node.inputs().size(); input++) {
        ask(node.inputs().get(input), node.needs(input, out));
      }
    }
  }

  private void ask(Node node, Region part) {
    if (!part.empty()) {
      TreeMap<Integer, Region> ofNode = asked.get(at(node));
      for (int k = bands.first(part); k <= bands.last(part); k++) {
        ofNode.merge(k, bands.cut(part, k), Region::hull);
      }
    }
  }

  private Map<Integer, Key> keys(Node node, Map<Integer, Region> ofNode) {
    Map<Integer, Key> made = new HashMap<>();
    if (!ofNode.isEmpty()) {
      node.describe(writer);
      Key description = writer.done();
      ofNode.forEach((band, out) -> made.put(band, key(node, description, band, out)));
    }
    return made;
  }

  private Key key(Node node, Key description, int band, Region out) {
    if (node instanceof Mix mix && mix.footprint(out).empty()) {
      return known(mix.below(), band);
    }
    float uniform = node.uniform(out);
    if (!Float.isNaN(uniform)) { // made of nothing, so that nothing below tells it apart
      return writer.word("uniform").number(uniform).number(node.planes()).done();
    }
    writer.key(description).number(bands.height()).number(band);
    for (int input = 0; input < node.inputs().size(); input++) {
      Region part = node.needs(input, out);
      if (part.empty()) {
        writer.number(0);
        continue;
      }
      int first = bands.first(part);
      int last = bands.last(part);
      writer.number(last - first + 1);
      for (int k = first; k <= last; k++) {
        writer.key(known(node.inputs().get(input), k));
      }
    }
    return writer.done();
  }

  private Key known(Node node, int band) {
    Key key = keys.get(at(node)).get(band);
    if (key == null) {
      throw new IllegalStateException("A node is needed that no other asked for: " + node);
    }
    return key;
  }

  private int at(Node node) {
    Integer i = index.get(node);
    if (i == null) {
      throw new IllegalArgumentException("Not one of these nodes: " + node);
    }
    return i;
  }
}
