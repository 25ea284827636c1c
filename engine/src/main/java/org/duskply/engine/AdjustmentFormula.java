package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.colour.GelMatrix;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Cdl;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Contrast;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.Ends;
import org.duskply.recipe.adjust.Exposure;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.adjust.Hue;
import org.duskply.recipe.adjust.Power;
import org.duskply.recipe.adjust.Saturation;
import org.duskply.recipe.adjust.Shoulder;

/**
 * Adjustments as equations: x a channel in linear light, Y luminance (whose change keeps the hue),
 * E the way to the encoded axis and L the way back.
 */
final class AdjustmentFormula {
  private static final List<Channel> CHANNELS = List.of(Channel.RED, Channel.GREEN, Channel.BLUE);

  private AdjustmentFormula() {}

  /** A list as equations, in order. */
  static String list(List<Adjustment> adjustments) {
    return String.join(", then ", adjustments.stream().map(AdjustmentFormula::of).toList());
  }

  /** The table of adjustments: one line each. */
  static String of(Adjustment adjustment) {
    if (adjustment instanceof Exposure exposure) {
      return "x·2^" + inBrackets(exposure.stops());
    }
    if (adjustment instanceof Curve curve) {
      return on(curve.channel(), between(curve.axis(), "curve(" + in(curve.axis()) + ")"));
    }
    if (adjustment instanceof Ends ends) {
      return "L(max(0, " + ends(ends) + "))";
    }
    if (adjustment instanceof Power power) {
      return "L(E(x)^" + exact(power.power()) + ")";
    }
    if (adjustment instanceof Contrast contrast) {
      String pivot = exact(contrast.pivot());
      String steepness = NumberWords.onePlus(contrast.strength());
      return on(contrast.channel(), pivot + "·(%s/" + pivot + ")^" + steepness);
    }
    if (adjustment instanceof Gel gel) {
      return gel(gel);
    }
    if (adjustment instanceof Saturation saturation) {
      return "Oklab a, b → " + exact(saturation.factor()) + "·(a, b)";
    }
    if (adjustment instanceof Hue hue) {
      return hue(hue);
    }
    return adjustment instanceof Cdl cdl ? cdl(cdl) : shoulder((Shoulder) adjustment);
  }

  private static String ends(Ends ends) {
    String black = exact(ends.black());
    return ends.black() == 0
        ? "E(x)/" + exact(ends.white())
        : "(E(x) − " + black + ")/(" + exact(ends.white()) + " − " + black + ")";
  }

  private static String gel(Gel gel) {
    String word = gel.plusGreen() < 0 ? " magenta" : " green";
    String green = gel.plusGreen() == 0 ? "" : " and " + exact(Math.abs(gel.plusGreen())) + word;
    String from = Math.round(GelMatrix.from(gel)) + " K";
    String to = Math.round(GelMatrix.to(gel)) + " K";
    return "Bradford(" + from + " → " + to + green + ")·(R, G, B)";
  }

  private static String hue(Hue hue) {
    String weight = hue.centre() == null ? "" : "·w";
    List<String> parts = new ArrayList<>();
    if (hue.turn() != 0) {
      parts.add("h → h" + plus(hue.turn()) + "°" + weight);
    }
    if (hue.chroma() != 1) {
      String factor = "(1" + plus(NumberWords.fromOne(hue.chroma())) + "·w)";
      parts.add("C → C·" + (hue.centre() == null ? exact(hue.chroma()) : factor));
    }
    if (hue.lightness() != 0) {
      parts.add("L → L" + plus(hue.lightness()) + weight);
    }
    return "Oklab " + String.join(", ", parts) + window(hue);
  }

  private static String window(Hue hue) {
    Double centre = hue.centre();
    Double width = hue.width();
    if (centre == null || width == null) {
      return "";
    }
    String range = exact(centre) + "°, " + exact(width) + "° wide, " + exact(hue.soft()) + "° soft";
    return "; w: hues about " + range;
  }

  private static String cdl(Cdl cdl) {
    List<String> lines = new ArrayList<>();
    boolean even = cdl.slope().even() && cdl.offset().even() && cdl.power().even();
    for (int i = 0; i < (even ? 1 : 3); i++) {
      String sum = in(cdl.axis()) + "·" + exact(cdl.slope().at(i)) + plus(cdl.offset().at(i));
      String line = "(" + sum + ")^" + exact(cdl.power().at(i));
      String all = cdl.saturation() == 1 ? between(cdl.axis(), line) : "v = " + line;
      lines.add(on(even ? Channel.RGB : CHANNELS.get(i), all));
    }
    if (cdl.saturation() != 1) {
      String luma = "0.2126·v_red + 0.7152·v_green + 0.0722·v_blue";
      String mixed = "luma + " + exact(cdl.saturation()) + "·(v − luma)";
      lines.add("x → " + between(cdl.axis(), mixed) + ", luma = " + luma);
    }
    return String.join(", ", lines) + (cdl.clamp() ? ", held to 0…1 at each step" : "");
  }

  private static String shoulder(Shoulder shoulder) {
    String begins = exact(shoulder.begins());
    String room = "(1 − " + begins + ")";
    String bent = begins + " + " + room + "·u·(1 + u/w²)/(1 + u)";
    String letters = "u = (x − " + begins + ")/" + room + ", w = u at " + exact(shoulder.whiteAt());
    return "above " + begins + ": " + bent + ", " + letters + "; 1 from there on";
  }

  /** A channel as it stands on an axis. */
  private static String in(Axis axis) {
    return axis == Axis.LINEAR ? "%s" : "E(%s)";
  }

  /** What is made on an axis, back in linear light. */
  private static String between(Axis axis, String made) {
    return axis == Axis.LINEAR ? made : "L(" + made + ")";
  }

  private static String exact(double value) {
    return NumberWords.exact(value);
  }

  static String inBrackets(double value) {
    return value < 0 ? "(−" + exact(-value) + ")" : exact(value);
  }

  /** {@code + 0.1} or {@code − 0.1}; nothing for 0. */
  private static String plus(double value) {
    return value == 0 ? "" : (value < 0 ? " − " : " + ") + exact(Math.abs(value));
  }

  /** A formula of what a channel word names. */
  private static String on(Channel channel, String formula) {
    return switch (channel) {
      case RGB -> formula.replace("%s", "x");
      case LUMINANCE -> "Y → " + formula.replace("%s", "Y");
      case RED, GREEN, BLUE -> channel.key() + " → " + formula.replace("%s", channel.key());
    };
  }
}
