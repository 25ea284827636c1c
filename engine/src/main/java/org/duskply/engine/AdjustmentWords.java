package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Cdl;
import org.duskply.recipe.adjust.Contrast;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.CurvePoint;
import org.duskply.recipe.adjust.Ends;
import org.duskply.recipe.adjust.Exposure;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.adjust.Hue;
import org.duskply.recipe.adjust.Power;
import org.duskply.recipe.adjust.Saturation;
import org.duskply.recipe.adjust.Shoulder;

/**
 * Adjustments in words of what they do to the light. Each is a clause with its own subject, so that
 * a list of them is one sentence.
 */
final class AdjustmentWords {
  private AdjustmentWords() {}

  /**
   * A list in order, joined by "then".
   *
   * @param subject what is adjusted, such as "the frame"; the first clause names it, the others go
   *     on with "it"
   */
  static String list(List<Adjustment> adjustments, String subject) {
    List<String> clauses = new ArrayList<>();
    for (Adjustment adjustment : adjustments) {
      clauses.add(clause(adjustment, clauses.isEmpty() ? subject : "it"));
    }
    return String.join("; then ", clauses);
  }

  /** The table of adjustments: one line each. */
  private static String clause(Adjustment adjustment, String it) {
    String its = it.equals("it") ? "its" : it + "'s";
    if (adjustment instanceof Exposure exposure) {
      return it + exposed(exposure.stops());
    }
    if (adjustment instanceof Curve curve) {
      return its + " " + curved(curve);
    }
    if (adjustment instanceof Ends ends) {
      return its + " encoded values are spread evenly so that " + ends(ends);
    }
    if (adjustment instanceof Power power) {
      return its + " encoded values are raised to the power of " + raised(power.power());
    }
    if (adjustment instanceof Contrast contrast) {
      return its + " contrast is " + contrast(contrast);
    }
    if (adjustment instanceof Gel gel) {
      return its + " light " + GelWords.verb(gel);
    }
    if (adjustment instanceof Saturation saturation) {
      return its + " colours are " + strengthened(saturation.factor());
    }
    if (adjustment instanceof Hue hue) {
      return its + " " + hue(hue);
    }
    return adjustment instanceof Shoulder shoulder
        ? its + " lights " + rolled(shoulder)
        : its + " " + CdlWords.verb((Cdl) adjustment);
  }

  private static String exposed(double stops) {
    return stops == 0
        ? " keeps its exposure"
        : " is made "
            + (stops > 0 ? "brighter" : "darker")
            + " by "
            + NumberWords.stops(Math.abs(stops));
  }

  private static String curved(Curve curve) {
    String what =
        switch (curve.channel()) {
          case RGB -> " red, green and blue follow";
          case LUMINANCE -> " luminance follows";
          case RED, GREEN, BLUE -> " " + curve.channel().key() + " follows";
        };
    List<String> points = new ArrayList<>();
    for (CurvePoint point : curve.points()) {
      points.add(NumberWords.exact(point.x()) + " → " + NumberWords.exact(point.y()));
    }
    return curve.axis().key() + what + " a curve through " + ListWords.and(points);
  }

  private static String ends(Ends ends) {
    return NumberWords.exact(ends.black())
        + (ends.black() == 0 ? " stays" : " becomes")
        + " black and "
        + NumberWords.exact(ends.white())
        + (ends.white() == 1 ? " stays" : " becomes")
        + " white";
  }

  private static String raised(double power) {
    return NumberWords.exact(power)
        + (power == 1
            ? ", which changes nothing"
            : ", which " + (power < 1 ? "lifts" : "lowers") + " the middle tones");
  }

  private static String contrast(Contrast contrast) {
    double strength = contrast.strength();
    if (strength == 0) {
      return "left as it is";
    }
    String how =
        switch (contrast.channel()) {
          case LUMINANCE -> ", with hues kept";
          case RGB -> " in red, green and blue, each by itself";
          case RED, GREEN, BLUE -> " in " + contrast.channel().key() + " alone";
        };
    return (strength > 0 ? "raised" : "lowered")
        + " by "
        + NumberWords.share(Math.abs(strength))
        + " about a linear grey of "
        + NumberWords.exact(contrast.pivot())
        + how;
  }

  private static String strengthened(double factor) {
    if (factor == 0) {
      return "taken away, which leaves grey";
    }
    return factor == 1
        ? "left as they are"
        : (factor > 1 ? "strengthened by " : "weakened by ") + NumberWords.change(factor);
  }

  private static String hue(Hue hue) {
    List<String> done = new ArrayList<>();
    if (hue.turn() != 0) {
      String way = hue.turn() > 0 ? "from red to yellow" : "from yellow to red";
      done.add("turned by " + NumberWords.exact(Math.abs(hue.turn())) + "° the way " + way);
    }
    if (hue.chroma() != 1) {
      done.add(strengthened(hue.chroma()));
    }
    if (hue.lightness() != 0) {
      done.add(
          (hue.lightness() > 0 ? "lightened by " : "darkened by ")
              + NumberWords.exact(Math.abs(hue.lightness()))
              + " of the way from black to white");
    }
    Double centre = hue.centre();
    Double width = hue.width();
    String which =
        centre == null || width == null
            ? "colours"
            : "hues " + MaskWords.around(centre, width, hue.soft());
    return which + " are " + (done.isEmpty() ? "left as they are" : ListWords.and(done));
  }

  private static String rolled(Shoulder shoulder) {
    return "roll off from a linear "
        + NumberWords.exact(shoulder.begins())
        + " on and are white from "
        + NumberWords.exact(shoulder.whiteAt())
        + " on";
  }
}
