package org.duskply.engine;

import org.duskply.engine.pixel.Region;
import org.duskply.recipe.Crop;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.Size;

/**
 * Where a crop's edges fall on the canvas: their distance from the grid's corner in pixels of the
 * canvas, rounded half up. An edge on the grid's edge stays on the picture's.
 */
final class CropFit {
  private final Size base;
  private final Size grid;
  private final int reduction;

  private CropFit(Size base, Size grid, int reduction) {
    this.base = base;
    this.grid = grid;
    this.reduction = reduction;
  }

  /**
   * The part of the canvas that is kept; all of it without a crop, or after a problem.
   *
   * @param base size of the base
   * @param canvas all pixels, at the preview's scale
   * @param reduction the {@code n} of a preview's scale {@code 1/n}
   * @param found told where the crop reaches out of the picture
   */
  static Region of(Recipe recipe, Size base, Region canvas, int reduction, Found found) {
    Crop crop = recipe.finish().crop();
    if (crop == null) {
      return canvas;
    }
    Size grid = recipe.grid() == null ? base : recipe.grid();
    if (!crop.inside(grid)) {
      found.problem("finish/crop", crop.fault(grid).sentence() + ".");
      return canvas;
    }
    return new CropFit(base, grid, reduction).part(crop, canvas);
  }

  private Region part(Crop crop, Region canvas) {
    int right = crop.left() + crop.width();
    int bottom = crop.top() + crop.height();
    int x = Math.min(edge(crop.left()), canvas.right() - 1);
    int y = Math.min(edge(crop.top()), canvas.bottom() - 1);
    int endX = right == grid.width() ? canvas.right() : Math.min(edge(right), canvas.right());
    int endY = bottom == grid.height() ? canvas.bottom() : Math.min(edge(bottom), canvas.bottom());
    return new Region(x, y, Math.max(endX, x + 1), Math.max(endY, y + 1));
  }

  /** {@code ⌊at·base/(grid·n) + ½⌋}, exactly: every length scales by the ratio of the widths. */
  private int edge(int at) {
    long whole = (long) grid.width() * reduction;
    return Math.toIntExact((2L * at * base.width() + whole) / (2 * whole));
  }
}
