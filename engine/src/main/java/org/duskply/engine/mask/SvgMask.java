package org.duskply.engine.mask;

import java.util.List;
import java.util.Map;
import org.duskply.engine.pixel.Affine;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.svg.DrawnShape;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.Svg;
import org.jspecify.annotations.Nullable;

/** {@code svg}: the inside of shapes of a drawing, all of them as one. */
public final class SvgMask {
  private SvgMask() {}

  /**
   * The outline of shapes on the canvas.
   *
   * @param shapes of a drawing, on the grid
   * @param rule what counts as inside; absent: what the drawing says of each shape
   * @param scale pixels of the canvas for one of the grid
   * @throws org.duskply.engine.DuskplyException beyond the limits of {@link Outline}
   */
  public static Outline outline(List<DrawnShape> shapes, @Nullable FillRule rule, double scale) {
    Affine toCanvas = Affine.scaling(scale, scale);
    Outline.Builder outline = new Outline.Builder();
    for (DrawnShape shape : shapes) {
      outline.shape(rule == null ? shape.rule() : rule);
      Flattener.flatten(shape.segments(), toCanvas.times(shape.map()), outline);
    }
    return outline.build();
  }

  static Node prepare(Svg svg, Map<Svg, Outline> drawn) {
    Outline outline = drawn.get(svg);
    if (outline == null) {
      throw new IllegalArgumentException("The drawing of " + svg + " was not opened");
    }
    // The outline itself, not the file's name: a drawing that is saved anew is another one.
    KeyWriter identity = new KeyWriter();
    outline.describe(identity);
    return new OutlineNode(OutlineRaster.of(outline), identity.done().toString());
  }
}
