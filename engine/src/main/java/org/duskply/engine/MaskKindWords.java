package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.mask.AllOf;
import org.duskply.recipe.mask.AnyOf;
import org.duskply.recipe.mask.Ease;
import org.duskply.recipe.mask.Ellipse;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.Flash;
import org.duskply.recipe.mask.FlashReach;
import org.duskply.recipe.mask.Gradient;
import org.duskply.recipe.mask.Hues;
import org.duskply.recipe.mask.Image;
import org.duskply.recipe.mask.Luminance;
import org.duskply.recipe.mask.LuminanceRange;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.mask.Oval;
import org.duskply.recipe.mask.Path;
import org.duskply.recipe.mask.PathData;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.mask.Polygon;
import org.duskply.recipe.mask.Ramp;
import org.duskply.recipe.mask.ShownSteps;
import org.duskply.recipe.mask.Stroke;
import org.duskply.recipe.mask.Strokes;
import org.duskply.recipe.mask.Svg;
import org.jspecify.annotations.Nullable;

/** What a mask starts from, as a noun. */
final class MaskKindWords {
  private MaskKindWords() {}

  /** The word that leads to a mask written out, with a space after it. */
  static String before(@Nullable MaskKind kind) {
    if (kind == null) {
      return "over ";
    }
    if (kind instanceof Luminance || kind instanceof Hues || kind instanceof Flash) {
      return "in ";
    }
    if (kind instanceof Gradient) {
      return "along ";
    }
    if (kind instanceof Image) {
      return "through ";
    }
    return kind instanceof Strokes ? "under " : "inside ";
  }

  /** The table of kinds: one line each. */
  static String noun(@Nullable MaskKind kind) {
    if (kind == null) {
      return "the whole picture";
    }
    if (kind instanceof Polygon polygon) {
      return "a polygon of " + polygon.points().size() + " corners" + crossing(polygon.rule());
    }
    if (kind instanceof Path path) {
      return "an outline drawn by "
          + count(PathData.parse(path.data()).size(), "path command")
          + crossing(path.rule());
    }
    if (kind instanceof Ellipse ellipse) {
      return oval(ellipse.oval());
    }
    if (kind instanceof Svg svg) {
      return shapes(svg);
    }
    if (kind instanceof AnyOf any) {
      String how = any.members().size() == 1 ? "" : " taken together, the stronger where they meet";
      return MaskWords.uses(any.members()) + how;
    }
    if (kind instanceof AllOf all) {
      String uses = MaskWords.uses(all.members());
      return all.members().size() == 1 ? uses : "the overlap of " + uses + " (their product)";
    }
    if (kind instanceof Gradient gradient) {
      return ramp(gradient.ramp());
    }
    if (kind instanceof Luminance luminance) {
      return parts(luminance.range().frame()) + brightness(luminance.range());
    }
    if (kind instanceof Hues hues) {
      String range =
          MaskWords.around(hues.range().centre(), hues.range().width(), hues.range().soft());
      return parts(hues.range().frame()) + "hue lies " + range.replaceAll(",$", "");
    }
    if (kind instanceof Flash flash) {
      return reach(flash.reach());
    }
    if (kind instanceof Strokes strokes) {
      return strokes(strokes.strokes());
    }
    return kind instanceof Image image
        ? "the mask painted in " + image.file()
        : "what " + ListWords.the("step", ((ShownSteps) kind).steps()) + changed((ShownSteps) kind);
  }

  private static String changed(ShownSteps shown) {
    return shown.steps().size() == 1 ? " covers" : " cover, the stronger where they meet";
  }

  private static String crossing(@Nullable FillRule rule) {
    return rule == FillRule.EVENODD ? " with what is enclosed twice left out" : "";
  }

  private static String oval(Oval oval) {
    String turned =
        oval.turn() == 0
            ? ""
            : ", turned "
                + (oval.turn() > 0 ? "clockwise" : "anticlockwise")
                + " by "
                + NumberWords.exact(Math.abs(oval.turn()))
                + "°";
    return "an ellipse about "
        + point(oval.centre())
        + " that reaches "
        + NumberWords.exact(oval.radii().across())
        + " px to the sides and "
        + NumberWords.exact(oval.radii().down())
        + " px up and down"
        + turned;
  }

  private static String point(Point point) {
    return "(" + NumberWords.signed(point.x()) + ", " + NumberWords.signed(point.y()) + ")";
  }

  private static String shapes(Svg svg) {
    String which = svg.wanted().isEmpty() ? "all shapes" : ListWords.the("shape", svg.wanted());
    String rule =
        svg.rule() == FillRule.NONZERO ? " with all that is enclosed" : crossing(svg.rule());
    return which + " of " + svg.file() + rule;
  }

  private static String ramp(Ramp ramp) {
    return "a gradient that rises "
        + (ramp.ease() == Ease.SMOOTH ? "smoothly" : "evenly")
        + " from nothing at "
        + point(ramp.from())
        + " to full at "
        + point(ramp.to());
  }

  private static String parts(@Nullable String frame) {
    return "those parts of "
        + (frame == null ? "the picture below" : "the frame " + frame)
        + " whose ";
  }

  private static String brightness(LuminanceRange range) {
    List<String> bounds = new ArrayList<>();
    if (range.from() != null) {
      bounds.add("at least " + NumberWords.exact(range.from()));
    }
    if (range.to() != null) {
      bounds.add("at most " + NumberWords.exact(range.to()));
    }
    String soft =
        range.soft() == 0 ? "" : ", fading out over a further " + NumberWords.exact(range.soft());
    return "encoded brightness is " + ListWords.and(bounds) + soft;
  }

  private static String reach(FlashReach reach) {
    return "those parts where the frame "
        + reach.frame()
        + " is brighter than "
        + (reach.ambient() == null ? "the base" : "the frame " + reach.ambient())
        + " by "
        + NumberWords.stops(reach.over())
        + " or more, fading out down to "
        + NumberWords.half(reach.over())
        + (reach.over() == 2 ? " stop" : " stops");
  }

  private static String strokes(List<Stroke> strokes) {
    List<String> each = strokes.stream().map(MaskKindWords::stroke).toList();
    return strokes.size() == 1
        ? "a brush stroke " + each.get(0)
        : strokes.size()
            + " brush strokes: "
            + ListWords.and(each.stream().map(stroke -> "one " + stroke).toList());
  }

  private static String stroke(Stroke stroke) {
    String soft =
        stroke.soft() == 0 ? "" : ", soft over " + NumberWords.share(stroke.soft()) + " of it";
    String strength = stroke.strength() == 1 ? "" : ", at " + NumberWords.share(stroke.strength());
    return "through "
        + count(stroke.points().size(), "point")
        + " with a radius of "
        + NumberWords.exact(stroke.radius())
        + " px"
        + soft
        + strength;
  }

  private static String count(int count, String noun) {
    return count + " " + noun + (count == 1 ? "" : "s");
  }
}
