package org.duskply.engine.mask;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.duskply.engine.DuskplyException;
import org.duskply.engine.filter.Gaussian;
import org.duskply.engine.filter.Widening;
import org.duskply.engine.plan.Node;
import org.duskply.recipe.mask.AllOf;
import org.duskply.recipe.mask.AnyOf;
import org.duskply.recipe.mask.Ellipse;
import org.duskply.recipe.mask.Gradient;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.mask.Path;
import org.duskply.recipe.mask.Polygon;
import org.duskply.recipe.mask.Svg;
import org.jspecify.annotations.Nullable;

/**
 * The masks of a recipe as nodes, each named mask once. A mask is its kind, then in this order
 * {@code within}, {@code except}, {@code widen}, {@code feather}, {@code inverted}, {@code
 * strength}. One instance serves one thread.
 */
public final class MaskGraph {
  private final Map<String, Mask> masks;
  private final Ground ground;
  private final Map<Svg, Outline> drawn;
  private final Map<String, Node> named = new HashMap<>();

  /**
   * Masks for a canvas.
   *
   * @param masks the recipe's masks; no ring among them
   * @param ground the grid that shapes are drawn on, and the canvas that they fall on
   * @param drawn the outlines of drawings that the masks use, on the canvas
   */
  public MaskGraph(Map<String, Mask> masks, Ground ground, Map<Svg, Outline> drawn) {
    this.masks = masks;
    this.ground = ground;
    this.drawn = drawn;
  }

  /** The node of a mask where it is used. */
  public Node of(MaskUse use) {
    if (use instanceof MaskUse.Named name) {
      Node known = named.get(name.name());
      if (known == null) {
        Mask mask = masks.get(name.name());
        if (mask == null) {
          throw new IllegalArgumentException("No mask " + name.name());
        }
        known = of(mask);
        named.put(name.name(), known);
      }
      return known;
    }
    return of(((MaskUse.Inline) use).mask());
  }

  private Node of(Mask mask) {
    Node node = start(mask.kind());
    for (MaskUse other : mask.within()) {
      node = CombinedNode.within(node, of(other));
    }
    for (MaskUse other : mask.except()) {
      node = CombinedNode.except(node, of(other));
    }
    if (mask.widen() != 0) {
      node = widened(node, mask.widen() * ground.scale());
    }
    if (mask.feather() > 0) {
      node = feathered(node, mask.feather() * ground.scale());
    }
    if (mask.inverted()) {
      node = CombinedNode.inverted(node);
    }
    return mask.strength() == 1 ? node : CombinedNode.strength(node, (float) mask.strength());
  }

  private Node widened(Node node, double by) {
    if (Math.abs(by) > Widening.MOST) {
      throw new DuskplyException(
          "An outline cannot be moved by "
              + Math.round(Math.abs(by))
              + " pixels of the base; "
              + Math.round(Widening.MOST)
              + " is the most.");
    }
    return new WidenNode(node, by, ground.canvas());
  }

  private Node feathered(Node node, double radius) {
    if (radius > Gaussian.MAX_RADIUS) {
      throw new DuskplyException(
          "A feather of "
              + Math.round(radius)
              + " pixels of the base is too wide; "
              + Math.round(Gaussian.MAX_RADIUS)
              + " is the most.");
    }
    return new FeatherNode(node, radius, ground.canvas());
  }

  /** The table of kinds: one line each. */
  private Node start(@Nullable MaskKind kind) {
    if (kind == null) {
      return new EverywhereNode();
    }
    if (kind instanceof Polygon polygon) {
      return PolygonMask.prepare(polygon, ground.scale());
    }
    if (kind instanceof Path path) {
      return PathMask.prepare(path, ground.scale());
    }
    if (kind instanceof Ellipse ellipse) {
      return EllipseMask.prepare(ellipse, ground.scale());
    }
    if (kind instanceof Svg svg) {
      return SvgMask.prepare(svg, drawn);
    }
    if (kind instanceof Gradient gradient) {
      return new GradientNode(gradient.ramp(), ground.scale());
    }
    if (kind instanceof AllOf all) {
      return CombinedNode.allOf(all(all.members()));
    }
    return CombinedNode.anyOf(all(((AnyOf) kind).members()));
  }

  private List<Node> all(List<MaskUse> uses) {
    return uses.stream().map(this::of).toList();
  }
}
