package org.duskply.recipe.mask;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Shape;
import org.jspecify.annotations.Nullable;

/**
 * Which masks have an outline that {@code widen} can move: shapes, and whatever is made of shapes
 * alone. A mask that names others is judged by those that are known; one that is not known may be
 * anything.
 */
public final class Outlines {
  private final Map<String, Mask> named;
  // Masks looked at already, or just now: what stands in the way, if anything.
  private final Map<String, String> known = new HashMap<>();

  /**
   * Looks at masks among others.
   *
   * @param named masks by name; may be in a ring
   */
  public Outlines(Map<String, Mask> named) {
    this.named = named;
  }

  /** What is wrong with a mask's {@code widen}; null when nothing is. */
  public @Nullable Fault fault(Mask mask) {
    return fault(mask.widen(), mask.kind(), mask.within(), mask.except());
  }

  @Nullable Fault fault(
      double widen, @Nullable MaskKind kind, List<MaskUse> within, List<MaskUse> except) {
    if (widen == 0) {
      return null;
    }
    String stranger = stranger(kind, within, except);
    if (!stranger.isEmpty()) {
      return new Fault(
          "widen",
          "`widen` moves an outline, and `"
              + stranger
              + "` has none; use it with polygon, path, ellipse or svg, or put those into a mask"
              + " of their own",
          stranger,
          "a mask of outlines alone");
    }
    return kind == null && within.isEmpty() && except.isEmpty()
        ? new Fault(
            "widen",
            "`widen` moves an outline, and this mask, which is everywhere, has none; delete it",
            "no outline",
            "a mask of outlines")
        : null;
  }

  /** The key of a kind that is no outline, in a mask or in those it is made of; "" without one. */
  private String stranger(@Nullable MaskKind kind, List<MaskUse> within, List<MaskUse> except) {
    List<MaskUse> uses = new ArrayList<>(within);
    uses.addAll(except);
    if (kind instanceof AnyOf any) {
      uses.addAll(any.members());
    } else if (kind instanceof AllOf all) {
      uses.addAll(all.members());
    } else if (kind != null && !isOutline(kind)) {
      return Shape.of(kind.getClass()).key();
    }
    for (MaskUse use : uses) {
      String stranger = stranger(use);
      if (!stranger.isEmpty()) {
        return stranger;
      }
    }
    return "";
  }

  private String stranger(Mask mask) {
    return stranger(mask.kind(), mask.within(), mask.except());
  }

  private String stranger(MaskUse use) {
    if (use instanceof MaskUse.Inline inline) {
      return stranger(inline.mask());
    }
    String name = ((MaskUse.Named) use).name();
    String before = known.putIfAbsent(name, "");
    Mask mask = named.get(name);
    if (before != null || mask == null) {
      return before == null ? "" : before;
    }
    String stranger = stranger(mask);
    known.put(name, stranger);
    return stranger;
  }

  private static boolean isOutline(MaskKind kind) {
    return kind instanceof Polygon
        || kind instanceof Path
        || kind instanceof Ellipse
        || kind instanceof Svg;
  }
}
