package org.duskply.engine.plan;

import java.util.List;
import org.duskply.engine.pixel.Region;

/**
 * A picture or a mask as a pure function of its inputs: one corner of the graph that a recipe
 * becomes. A picture has three planes (a frame with coverage four), a mask one. Nodes are
 * immutable, thread-safe, and compared by identity.
 */
public sealed interface Node permits FrameNode, PointNode, AreaNode {
  /** What it is computed from. */
  List<Node> inputs();

  /** How many planes it has. */
  int planes();

  /**
   * The pixels of {@code within} where it is something of its own: elsewhere a mask is 0, and a
   * picture is its first input. Pure, and monotone in {@code within}. May be larger than need be.
   */
  Region footprint(Region within);

  /**
   * The pixels of {@code inputs().get(input)} that are read to make {@code out}. Pure, and monotone
   * in {@code out}.
   */
  Region needs(int input, Region out);

  /**
   * The value that every pixel of {@code region} has in every plane, where that is known without
   * making them; NaN where it is not. Pure; what is known of a region is known of its parts.
   */
  default float uniform(Region region) {
    return Float.NaN;
  }

  /**
   * Writes what it does, without its inputs: equal descriptions and equal inputs give equal pixels.
   */
  void describe(KeyWriter key);
}
