package org.duskply.benchmarks.kernels;

import java.util.List;
import java.util.Map;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.testing.Close;
import org.duskply.recipe.mask.AllOf;
import org.duskply.recipe.mask.AnyOf;
import org.duskply.recipe.mask.Ellipse;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.Flash;
import org.duskply.recipe.mask.FlashReach;
import org.duskply.recipe.mask.Gradient;
import org.duskply.recipe.mask.HueRange;
import org.duskply.recipe.mask.Hues;
import org.duskply.recipe.mask.Luminance;
import org.duskply.recipe.mask.LuminanceRange;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.mask.Path;
import org.duskply.recipe.mask.Polygon;
import org.duskply.recipe.mask.Strokes;

/**
 * A mask of each kind that has a way of its own to be made. A drawing is filled as a path is, a
 * painted mask is copied or resampled, and where steps show is the greatest of their masks.
 */
public enum Masked {
  POLYGON(
      new Polygon(MaskShapes.star(12, 500, 300), FillRule.NONZERO),
      total(MaskShapes.area(MaskShapes.star(12, 500, 300)), 1e-6 * Square.PIXELS)),
  STAR(
      new Polygon(MaskShapes.star(200, 500, 300), FillRule.NONZERO),
      total(MaskShapes.area(MaskShapes.star(200, 500, 300)), 1e-6 * Square.PIXELS)),
  /** Four cubics, which lie up to 0.027 % of the radius outside the circle. */
  PATH(
      new Path(MaskShapes.roundPath(400), FillRule.NONZERO),
      total(Math.PI * 400 * 400, 0.00054 * Math.PI * 400 * 400)),
  /** Chords take up to 0.01 px all around. */
  ELLIPSE(
      new Ellipse(MaskShapes.oval(450, 250)), total(Math.PI * 450 * 250, 0.01 * 2 * Math.PI * 450)),
  GRADIENT(new Gradient(MaskShapes.LINEAR), each((views, x, y) -> MaskShapes.along(x, y))),
  SMOOTH_GRADIENT(
      new Gradient(MaskShapes.SMOOTH), each((views, x, y) -> MaskShapes.smoothly(x, y))),
  STROKES(new Strokes(MaskShapes.STROKES), each((views, x, y) -> MaskShapes.stroked(x, y))),
  LUMINANCE(
      new Luminance(new LuminanceRange(0.4, 0.7, 0.1, "0")),
      each((views, x, y) -> ViewFormulas.luminance(0.4, 0.7, 0.1, views.linear(0, x, y)))),
  /** Oklab in float is off by 2⁻²⁰, and from grey to coloured a weight rises by 75 times that. */
  HUE(
      new Hues(new HueRange(255, 60, 20, "0")),
      each(75 * 0x1p-20, (views, x, y) -> ViewFormulas.hue(255, 60, 20, views.linear(0, x, y)))),
  FLASH(
      new Flash(new FlashReach("1", "0", 0.5)),
      each((views, x, y) -> ViewFormulas.flash(views, 1, 0, 0.5, x, y))),
  ALL_OF(
      new AllOf(
          List.of(use(new Gradient(MaskShapes.LINEAR)), use(new Gradient(MaskShapes.SMOOTH)))),
      each((views, x, y) -> MaskShapes.along(x, y) * MaskShapes.smoothly(x, y))),
  ANY_OF(
      new AnyOf(
          List.of(use(new Gradient(MaskShapes.LINEAR)), use(new Gradient(MaskShapes.SMOOTH)))),
      each((views, x, y) -> Math.max(MaskShapes.along(x, y), MaskShapes.smoothly(x, y))));

  /** A mask's value at a pixel, in double. */
  private interface Formula {
    double at(Views views, int x, int y);
  }

  /** Fails where a mask is not what it should be. */
  private interface Check {
    void of(Planes mask, Views views);
  }

  private final MaskKind kind;
  private final Check check;

  Masked(MaskKind kind, Check check) {
    this.kind = kind;
    this.check = check;
  }

  /** What the mask starts from, and all that there is to it. */
  MaskKind kind() {
    return kind;
  }

  /** How another mask or a step uses the mask of a kind. */
  static MaskUse use(MaskKind kind) {
    return new MaskUse.Inline(new Mask(kind, List.of(), List.of(), 0, 0, false, 1, Map.of()));
  }

  /** Fails unless {@code made} is this mask. */
  void check(Planes made, Views views) {
    check.of(made, views);
  }

  private static Check each(Formula formula) {
    return each(Answers.NEAR, formula);
  }

  private static Check each(double bound, Formula formula) {
    return (mask, views) -> {
      for (int y = 0; y < Square.SIDE; y += 93) {
        for (int x = 0; x < Square.SIDE; x++) {
          float got = mask.plane(0)[mask.at(x, y)];
          Close.within("mask at " + x + ", " + y, got, formula.at(views, x, y), bound);
        }
      }
    };
  }

  private static Check total(double area, double bound) {
    return (mask, views) -> {
      double sum = 0;
      for (float share : mask.plane(0)) {
        sum += share;
      }
      Close.within("area of the mask", sum, area, bound);
    };
  }
}
