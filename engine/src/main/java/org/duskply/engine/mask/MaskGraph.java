package org.duskply.engine.mask;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.duskply.engine.DuskplyException;
import org.duskply.engine.colour.HueWindow;
import org.duskply.engine.colour.Oklab;
import org.duskply.engine.filter.Gaussian;
import org.duskply.engine.filter.Widening;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Node;
import org.duskply.recipe.mask.AllOf;
import org.duskply.recipe.mask.AnyOf;
import org.duskply.recipe.mask.Ellipse;
import org.duskply.recipe.mask.Flash;
import org.duskply.recipe.mask.FlashReach;
import org.duskply.recipe.mask.Gradient;
import org.duskply.recipe.mask.HueRange;
import org.duskply.recipe.mask.Hues;
import org.duskply.recipe.mask.Image;
import org.duskply.recipe.mask.Luminance;
import org.duskply.recipe.mask.LuminanceRange;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.mask.Path;
import org.duskply.recipe.mask.Polygon;
import org.duskply.recipe.mask.ShownSteps;
import org.duskply.recipe.mask.Strokes;
import org.duskply.recipe.mask.Svg;
import org.jspecify.annotations.Nullable;

/**
 * The masks of a recipe as nodes. A mask is its kind, then in this order {@code within}, {@code
 * except}, {@code widen}, {@code feather}, {@code inverted}, {@code strength}.
 *
 * <p>A named mask is one node wherever it is used, unless it or one of its members depends on the
 * picture below the step: then it is one node for each such picture. One instance serves one
 * thread.
 */
public final class MaskGraph {
  /** What a mask depends on beside what it says: its node is another where these are others. */
  private record Depends(boolean onPicture, boolean onSteps) {
    static final Depends ON_NOTHING = new Depends(false, false);

    Depends or(Depends other) {
      return new Depends(onPicture || other.onPicture, onSteps || other.onSteps);
    }
  }

  /** A named mask where it is used; pictures and steps are told apart by identity. */
  private record Named(String name, @Nullable Node below, @Nullable StepShows shows) {}

  private final Map<String, Mask> masks;
  private final Ground ground;
  private final Map<Svg, Outline> drawn;
  private final MaskSources sources;
  private final Map<String, Depends> depending = new HashMap<>();
  private final Map<Named, Node> named = new HashMap<>();
  private StepShows shows = new StepShows();
  private @Nullable Node here;

  /**
   * Masks for a canvas.
   *
   * @param masks the recipe's masks; no ring among them
   * @param ground the grid that shapes are drawn on, and the canvas that they fall on
   * @param drawn the outlines of drawings that the masks use, on the canvas
   * @param sources what masks are made of beside shapes
   */
  public MaskGraph(
      Map<String, Mask> masks, Ground ground, Map<Svg, Outline> drawn, MaskSources sources) {
    this.masks = masks;
    this.ground = ground;
    this.drawn = drawn;
    this.sources = sources;
  }

  /**
   * Begins with the steps of another picture.
   *
   * @return to be told where each step shows that is done
   */
  public StepShows begin() {
    shows = new StepShows();
    here = null;
    return shows;
  }

  /**
   * The node of a mask where a step uses it.
   *
   * @param below the picture below the step
   */
  public Node of(MaskUse use, Node below) {
    here = below;
    return of(use);
  }

  /** The node of a mask that needs no other picture below than the last. */
  Node of(MaskUse mask) {
    if (!(mask instanceof MaskUse.Named name)) {
      return of(((MaskUse.Inline) mask).mask());
    }
    Depends depends = depends(name.name());
    Named use =
        new Named(name.name(), depends.onPicture() ? here : null, depends.onSteps() ? shows : null);
    Node known = named.get(use);
    if (known == null) {
      known = of(mask(name.name()));
      named.put(use, known);
    }
    return known;
  }

  private Mask mask(String name) {
    Mask mask = masks.get(name);
    if (mask == null) {
      throw new IllegalArgumentException("No mask " + name);
    }
    return mask;
  }

  private Depends depends(String name) {
    Depends known = depending.get(name);
    if (known == null) {
      known = depends(mask(name));
      depending.put(name, known);
    }
    return known;
  }

  private Depends depends(Mask mask) {
    MaskKind kind = mask.kind();
    Depends depends =
        kind == null
            ? Depends.ON_NOTHING
            : new Depends(kind.readsBelow(), kind instanceof ShownSteps);
    for (MaskUse part : mask.parts()) {
      depends =
          depends.or(
              part instanceof MaskUse.Named name
                  ? depends(name.name())
                  : depends(((MaskUse.Inline) part).mask()));
    }
    return depends;
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
    if (kind instanceof Luminance luminance) {
      return luminance(luminance.range());
    }
    if (kind instanceof Hues hues) {
      return hue(hues.range());
    }
    if (kind instanceof Image image) {
      return painted(image);
    }
    if (kind instanceof Strokes strokes) {
      return StrokesNode.of(strokes, ground);
    }
    if (kind instanceof Flash flash) {
      return flash(flash.reach());
    }
    if (kind instanceof ShownSteps steps) {
      return shows.anyOf(steps.steps().stream().map(this::path).toList());
    }
    return CombinedNode.anyOf(all(((AnyOf) kind).members()));
  }

  private Node luminance(LuminanceRange range) {
    return new LuminanceNode(picture(range.frame()), range, sources.working().luminance());
  }

  private Node hue(HueRange range) {
    HueWindow window =
        HueWindow.of(Oklab.of(sources.working()), range.centre(), range.width(), range.soft());
    return new HueNode(picture(range.frame()), window, range + " in " + sources.working());
  }

  private Node painted(Image image) {
    FrameNode picture = sources.painted(image.file());
    Node mask = new PaintedNode(picture);
    Region canvas = ground.canvas();
    return picture.canvas().equals(canvas)
        ? mask
        : new ResizedMaskNode(mask, picture.canvas(), canvas);
  }

  private Node flash(FlashReach reach) {
    Node flash = sources.frame(reach.frame());
    Node ambient = reach.ambient() == null ? sources.base() : sources.frame(reach.ambient());
    Node stops = new FlashRatioNode(flash, ambient, sources.working().luminance());
    return new FlashReachNode(new MedianNode(stops, ground.canvas()), reach.over());
  }

  private String path(String step) {
    return sources.step(step).orElseThrow(() -> new IllegalArgumentException("No step " + step));
  }

  /** A frame, or without a name the picture below. */
  private Node picture(@Nullable String frame) {
    if (frame != null) {
      return sources.frame(frame);
    }
    if (here == null) {
      throw new IllegalStateException("A mask of the picture below was asked for without one");
    }
    return here;
  }

  private List<Node> all(List<MaskUse> uses) {
    return uses.stream().map(this::of).toList();
  }
}
