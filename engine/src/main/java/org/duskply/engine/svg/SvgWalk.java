package org.duskply.engine.svg;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.duskply.engine.pixel.Affine;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.PathSegment;

/**
 * Gathers the shapes below an element, with the map of each to the grid. Serves one request.
 *
 * <p>Groups are {@code g a switch svg}; {@code use} repeats an element of the same drawing. What
 * stands in {@code defs}, {@code symbol} and the like is shown by uses alone. What is hidden counts
 * only where its own id is asked for. Clips are not applied.
 */
final class SvgWalk {
  private final String file;
  private final Map<String, SvgElement> byId;
  private final List<DrawnShape> shapes = new ArrayList<>();
  private int visited;
  private int segments;
  private long read;

  SvgWalk(String file, Map<String, SvgElement> byId) {
    this.file = file;
    this.byId = byId;
  }

  /** What the shapes gathered so far are. */
  List<DrawnShape> shapes() {
    return shapes;
  }

  /**
   * Where the walk is: what holds for all that stands below.
   *
   * @param map from the coordinates below to the grid
   * @param width what 100 % is across
   * @param height what 100 % is down
   * @param rule fill rule that is handed down
   * @param ruleName the property that sets it: inside a clip path {@code clip-rule}
   * @param hidden whether the visibility handed down hides shapes
   * @param depth elements around this place, uses included
   */
  private record At(
      Affine map,
      double width,
      double height,
      FillRule rule,
      String ruleName,
      boolean hidden,
      int depth) {
    At mapped(Affine inner) {
      return new At(map.times(inner), width, height, rule, ruleName, hidden, depth);
    }

    At sized(double w, double h) {
      return new At(map, w, h, rule, ruleName, hidden, depth);
    }

    At clip() {
      return new At(map, width, height, FillRule.NONZERO, "clip-rule", hidden, depth);
    }

    At below(FillRule newRule, boolean newHidden) {
      return new At(map, width, height, newRule, ruleName, newHidden, depth + 1);
    }
  }

  /** Gathers all shapes that a drawing shows. */
  void all(SvgElement root, Affine map, double width, double height) {
    At at = new At(map, width, height, FillRule.NONZERO, "fill-rule", false, 0);
    if (!isHidden(root)) {
      children(root, inherited(root, at));
    }
  }

  /** Gathers the shapes of one element of a drawing, be it hidden or not. */
  void one(SvgElement asked, Affine map, double width, double height) {
    Deque<SvgElement> way = new ArrayDeque<>();
    for (SvgElement e = asked.parent(); e != null; e = e.parent()) {
      way.push(e);
    }
    checkShown(asked);
    At at = new At(map, width, height, FillRule.NONZERO, "fill-rule", false, 0);
    boolean root = true;
    for (SvgElement e : way) {
      at = inherited(e, root ? at : e.is("clipPath") ? clip(e, at) : inside(e, at));
      root = false;
    }
    At visible =
        new At(at.map(), at.width(), at.height(), at.rule(), at.ruleName(), false, at.depth());
    if (way.isEmpty()) {
      children(asked, inherited(asked, visible));
    } else {
      element(asked, visible, true);
    }
  }

  /** An element in a store of parts is not shown where it stands. */
  private void checkShown(SvgElement asked) {
    for (SvgElement e = asked; e != null && !e.is("clipPath"); e = e.parent()) {
      if (e.is("defs", "symbol", "pattern", "marker", "mask")) {
        throw new DrawingException(
            String.format(
                Locale.ROOT,
                "%s in %s is a part kept in `%s` and not shown there; give the id of the `use`"
                    + " that shows it",
                asked.shown(),
                file,
                e.name()));
      }
    }
  }

  private void element(SvgElement e, At at, boolean asked) {
    if (++visited > SvgLimits.ELEMENTS || at.depth() > SvgLimits.DEPTH) {
      throw new DrawingException(
          file + " repeats parts of itself without end, or too often: see its `use` elements");
    }
    if (!asked && isHidden(e)) {
      return;
    }
    At own = inherited(e, at);
    if (asked) {
      own = own.below(own.rule(), false);
    }
    if (SvgShapes.isShape(e)) {
      shape(e, own);
    } else if (e.is("use")) {
      use(e, own);
    } else if (e.is("g", "a", "switch", "svg")) {
      children(e, inside(e, own));
    } else if (asked && e.is("clipPath")) {
      children(e, inherited(e, clip(e, own)));
    }
  }

  private void children(SvgElement e, At at) {
    for (SvgElement child : e.children()) {
      element(child, at, false);
    }
  }

  /** What an element hands down to those it holds, its own place aside. */
  private At inherited(SvgElement e, At at) {
    read += e.length();
    if (read > SvgLimits.READ) {
      throw new DrawingException(
          file + " repeats elements with so much text that they hold more than 64 million letters");
    }
    String rule = e.property(at.ruleName());
    String visibility = e.property("visibility");
    return at.below(
        rule == null ? at.rule() : rule.equals("evenodd") ? FillRule.EVENODD : FillRule.NONZERO,
        visibility == null ? at.hidden() : !visibility.equals("visible"));
  }

  private static boolean isHidden(SvgElement e) {
    return "none".equals(e.property("display"));
  }

  /** The coordinates inside a group. */
  private At inside(SvgElement e, At at) {
    At moved = at.mapped(transform(e));
    if (!e.is("svg")) {
      return moved;
    }
    SvgShapes lengths = lengths(at);
    double w = lengths.length(e, "width", at.width(), at.width());
    double h = lengths.length(e, "height", at.height(), at.height());
    double x = lengths.length(e, "x", at.width(), 0);
    double y = lengths.length(e, "y", at.height(), 0);
    return viewport(e, moved.mapped(Affine.translation(x, y)), w, h);
  }

  /** A rectangle that an {@code svg} or a {@code symbol} is fitted into. */
  private At viewport(SvgElement e, At at, double w, double h) {
    String text = e.attribute("viewBox");
    if (text == null) {
      return at.sized(w, h);
    }
    ViewBox box = ViewBox.parse(text);
    if (box == null) {
      throw lengths(at).unreadable(e, "viewBox");
    }
    Affine fit = box.into(Math.max(0, w), Math.max(0, h), e.attribute("preserveAspectRatio"));
    return at.mapped(fit).sized(box.width(), box.height());
  }

  private At clip(SvgElement e, At at) {
    if ("objectBoundingBox".equals(e.attribute("clipPathUnits"))) {
      throw new DrawingException(
          e.shown() + " in " + file + " is measured by whatever it clips, so it has no place");
    }
    return at.clip().mapped(transform(e));
  }

  private void use(SvgElement e, At at) {
    String href = e.attribute("href");
    SvgElement target = href == null || !href.startsWith("#") ? null : byId.get(href.substring(1));
    if (target == null) {
      throw new DrawingException(
          String.format(
              Locale.ROOT,
              "%s in %s repeats \"%s\", which is not in this file",
              e.shown(),
              file,
              SvgWords.quoted(href == null ? "" : href)));
    }
    SvgShapes lengths = lengths(at);
    double x = lengths.length(e, "x", at.width(), 0);
    double y = lengths.length(e, "y", at.height(), 0);
    At moved = at.mapped(transform(e)).mapped(Affine.translation(x, y));
    if (target.is("symbol", "svg")) {
      framed(e, target, moved);
    } else {
      element(target, moved, false);
    }
  }

  /** A symbol or a drawing inside the drawing, in the size that its use gives it. */
  private void framed(SvgElement use, SvgElement target, At at) {
    if (isHidden(target)) {
      return;
    }
    SvgElement sized = target;
    At moved = inherited(target, at).mapped(transform(target));
    SvgShapes lengths = lengths(at);
    double w = size(lengths, use, sized, "width", at.width());
    double h = size(lengths, use, sized, "height", at.height());
    double x = lengths.length(target, "x", at.width(), 0);
    double y = lengths.length(target, "y", at.height(), 0);
    if (++visited > SvgLimits.ELEMENTS || at.depth() > SvgLimits.DEPTH) {
      throw new DrawingException(
          file + " repeats parts of itself without end, or too often: see its `use` elements");
    }
    children(target, viewport(target, moved.mapped(Affine.translation(x, y)), w, h));
  }

  private static double size(
      SvgShapes lengths, SvgElement use, SvgElement target, String attribute, double whole) {
    double own = lengths.length(target, attribute, whole, whole);
    return lengths.length(use, attribute, whole, own);
  }

  private void shape(SvgElement e, At at) {
    if (at.hidden()) {
      return;
    }
    List<PathSegment> outline = lengths(at).outline(e);
    segments += outline.size();
    if (segments > SvgLimits.SEGMENTS) {
      throw new DrawingException(
          file + " has shapes of more than 400,000 lines and curves all told, the most of a mask");
    }
    if (!outline.isEmpty()) {
      shapes.add(new DrawnShape(outline, at.mapped(transform(e)).map(), at.rule()));
    }
  }

  private SvgShapes lengths(At at) {
    return new SvgShapes(file, at.width(), at.height());
  }

  private Affine transform(SvgElement e) {
    String styled = e.styled("transform");
    if (styled != null && !styled.equals("none")) {
      throw new DrawingException(
          e.shown()
              + " in "
              + file
              + " is moved by its style, which is not read; save the drawing with `transform`"
              + " attributes");
    }
    String text = e.attribute("transform");
    if (text == null) {
      return Affine.IDENTITY;
    }
    Affine map = e.property("transform-origin") == null ? SvgTransform.parse(text) : null;
    if (map == null) {
      throw lengths(new At(Affine.IDENTITY, 0, 0, FillRule.NONZERO, "", false, 0))
          .unreadable(e, e.property("transform-origin") == null ? "transform" : "transform-origin");
    }
    return map;
  }
}
