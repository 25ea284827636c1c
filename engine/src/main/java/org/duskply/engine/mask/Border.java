package org.duskply.engine.mask;

import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.duskply.engine.filter.EdgeValues;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.jspecify.annotations.Nullable;

/**
 * What a neighbourhood reads of a mask beyond the canvas: the mask itself where it is {@link
 * Boundless}, else its values at the canvas's edge, continued. A mask that is not boundless is
 * never asked for anything outside the canvas. Immutable but for what it remembers.
 */
final class Border {
  /**
   * Neighbourhoods inside each other up to which each row's own footprint is asked for. Each may
   * double the regions that are asked of those below, so that beyond this one footprint, that of
   * the whole mask, has to do.
   */
  private static final int EXACT = 6;

  /** A mask that reads a neighbourhood of another. */
  interface Reader {
    /** Of the mask that it reads. */
    Border border();
  }

  private final Node mask;
  private final Region canvas;
  private final boolean boundless;
  private final int depth;
  private volatile @Nullable Region whole;

  private Border(Node mask, Region canvas, boolean boundless, int depth) {
    this.mask = mask;
    this.canvas = canvas;
    this.boundless = boundless;
    this.depth = depth;
  }

  /** The border of a mask. */
  static Border of(Node mask, Region canvas) {
    return new Border(mask, canvas, Boundless.is(mask), 1 + depthBelow(mask));
  }

  /** The most neighbourhoods inside each other that a mask is made with. */
  private static int depthBelow(Node mask) {
    Set<Node> met = Collections.newSetFromMap(new IdentityHashMap<>());
    Deque<Node> waiting = new ArrayDeque<>(List.of(mask));
    int deepest = 0;
    while (!waiting.isEmpty()) {
      Node node = waiting.pop();
      if (node instanceof Reader reader) {
        deepest = Math.max(deepest, reader.border().depth);
      } else if (met.add(node) && node.planes() == 1) {
        waiting.addAll(node.inputs());
      }
    }
    return deepest;
  }

  /** Writes what it adds to the mask: the canvas, where that decides what lies beyond it. */
  void describe(KeyWriter key) {
    key.region(boundless ? Region.EVERYWHERE : canvas);
  }

  /** What must be asked of the mask to know it in {@code needed}. */
  Region reads(Region needed) {
    return boundless ? needed : needed.meet(canvas);
  }

  /** Where the mask shows in what is read to know it in {@code needed}. */
  Region footprint(Region needed) {
    if (depth <= EXACT) {
      return mask.footprint(reads(needed));
    }
    Region shown = whole;
    if (shown == null) {
      shown = mask.footprint(reads(Region.EVERYWHERE));
      whole = shown;
    }
    return shown.meet(reads(needed));
  }

  /**
   * The mask in all of {@code needed}.
   *
   * @param read what it has in {@link #reads}
   */
  Planes continued(Planes read, Region needed) {
    if (boundless || canvas.contains(needed)) {
      return read;
    }
    Planes all = new Planes(needed, 1);
    all.copyFrom(read);
    EdgeValues.extend(all, canvas);
    return all;
  }

  /** Bytes that {@link #continued} takes. */
  long scratchBytes(Region needed) {
    return boundless || canvas.contains(needed) ? 0 : Planes.bytes(needed, 1);
  }
}
