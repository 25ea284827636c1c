package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;
import org.jspecify.annotations.Nullable;

/**
 * Masks combined pixel by pixel: {@code within}, {@code except}, {@code any-of}, {@code all-of},
 * {@code inverted}, {@code strength}. Each way is a static loop, chosen when the graph is built.
 */
final class CombinedNode implements PointNode {
  /** One row of a way to combine. */
  private interface Way {
    void row(float[][][] in, float[] out, int from, int to);
  }

  /** Which pixels a combination can show. */
  private enum Shows {
    /** Those of its first member. */
    FIRST,
    /** Those that all its members show. */
    ALL,
    /** Those that any of its members shows. */
    ANY,
    /** All that are asked for. */
    EVERYWHERE
  }

  /** The footprint that was asked for last: masks may share members many times over. */
  private record Known(Region within, Region footprint) {}

  private final String word;
  private final List<Node> members;
  private final Shows shows;
  private final Way way;
  private final double parameter;
  private volatile @Nullable Known known;

  private CombinedNode(String word, List<Node> members, Shows shows, Way way, double parameter) {
    this.word = word;
    this.members = List.copyOf(members);
    this.shows = shows;
    this.way = way;
    this.parameter = parameter;
  }

  /** A mask multiplied by another, {@code a·b}. */
  static Node within(Node mask, Node other) {
    return new CombinedNode(
        "within", List.of(mask, other), Shows.ALL, CombinedNode::product, Double.NaN);
  }

  /** A mask multiplied by the rest of another, {@code a·(1 − b)}. */
  static Node except(Node mask, Node other) {
    return new CombinedNode(
        "except", List.of(mask, other), Shows.FIRST, CombinedNode::except, Double.NaN);
  }

  /** The greatest of several masks; of one, itself. */
  static Node anyOf(List<Node> members) {
    return members.size() == 1
        ? members.get(0)
        : new CombinedNode("any-of", members, Shows.ANY, CombinedNode::greatest, members.size());
  }

  /** The product of several masks, in their order; of one, itself. */
  static Node allOf(List<Node> members) {
    return members.size() == 1
        ? members.get(0)
        : new CombinedNode("all-of", members, Shows.ALL, CombinedNode::product, members.size());
  }

  /** One minus a mask. It shows wherever the mask does not. */
  static Node inverted(Node mask) {
    return new CombinedNode(
        "inverted", List.of(mask), Shows.EVERYWHERE, CombinedNode::inverted, Double.NaN);
  }

  /** A mask times a number. */
  static Node strength(Node mask, float strength) {
    return new CombinedNode(
        "strength",
        List.of(mask),
        Shows.FIRST,
        (in, out, from, to) -> weaker(in[0][0], strength, out, from, to),
        strength);
  }

  @Override
  public List<Node> inputs() {
    return members;
  }

  @Override
  public int planes() {
    return 1;
  }

  @Override
  public Region footprint(Region within) {
    Known last = known;
    if (last == null || !last.within().equals(within)) {
      last = new Known(within, shown(within));
      known = last;
    }
    return last.footprint();
  }

  private Region shown(Region within) {
    if (shows == Shows.EVERYWHERE) {
      return within;
    }
    Region shown = members.get(0).footprint(within);
    for (Node other : shows == Shows.FIRST ? List.<Node>of() : members.subList(1, members.size())) {
      Region next = other.footprint(within);
      shown = shows == Shows.ALL ? shown.meet(next) : shown.hull(next);
    }
    return shown;
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    way.row(in, out[0], from, to);
  }

  private static void product(float[][][] in, float[] out, int from, int to) {
    System.arraycopy(in[0][0], from, out, from, to - from);
    for (int m = 1; m < in.length; m++) {
      float[] values = in[m][0];
      for (int i = from; i < to; i++) {
        out[i] *= values[i];
      }
    }
  }

  private static void except(float[][][] in, float[] out, int from, int to) {
    float[] mask = in[0][0];
    float[] other = in[1][0];
    for (int i = from; i < to; i++) {
      out[i] = mask[i] * (1f - other[i]);
    }
  }

  private static void greatest(float[][][] in, float[] out, int from, int to) {
    System.arraycopy(in[0][0], from, out, from, to - from);
    for (int m = 1; m < in.length; m++) {
      float[] values = in[m][0];
      for (int i = from; i < to; i++) {
        out[i] = Math.max(out[i], values[i]);
      }
    }
  }

  private static void inverted(float[][][] in, float[] out, int from, int to) {
    float[] mask = in[0][0];
    for (int i = from; i < to; i++) {
      out[i] = 1f - mask[i];
    }
  }

  private static void weaker(float[] mask, float strength, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      out[i] = mask[i] * strength;
    }
  }

  @Override
  public void describe(KeyWriter key) {
    key.word(word);
    if (!Double.isNaN(parameter)) {
      key.number(parameter);
    }
  }
}
