package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Contrast;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.Exposure;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.adjust.Power;
import org.duskply.recipe.adjust.Saturation;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Keyed;
import org.duskply.recipe.shape.Shape;

/**
 * Adjustments in words and as equations: x a channel in linear light, Y luminance (whose change
 * keeps the hue), E the way to the encoded axis and L the way back.
 */
final class AdjustmentWords {
  private AdjustmentWords() {}

  /** A list in words: each by its Shape, with the values that are not as by default. */
  static String list(List<Adjustment> adjustments) {
    List<String> words = new ArrayList<>();
    for (Adjustment adjustment : adjustments) {
      words.add(words((Record & Adjustment) adjustment));
    }
    return String.join(", then ", words);
  }

  /** A list as equations, in order. */
  static String formulas(List<Adjustment> adjustments) {
    return String.join(", then ", adjustments.stream().map(AdjustmentWords::formula).toList());
  }

  /** The table of adjustments: one line each. */
  private static String formula(Adjustment adjustment) {
    if (adjustment instanceof Exposure exposure) {
      return "x·2^" + exponent(exposure.stops());
    }
    if (adjustment instanceof Power power) {
      return "L(E(x)^" + NumberWords.exact(power.power()) + ")";
    }
    if (adjustment instanceof Contrast contrast) {
      String pivot = NumberWords.exact(contrast.pivot());
      String steepness = NumberWords.onePlus(contrast.strength());
      return on(contrast.channel(), pivot + "·(%s/" + pivot + ")^" + steepness);
    }
    if (adjustment instanceof Curve curve) {
      return on(curve.channel(), curve.axis() == Axis.LINEAR ? "curve(%s)" : "L(curve(E(%s)))");
    }
    if (adjustment instanceof Gel) {
      return "Bradford(x)";
    }
    return "Oklab a, b → " + NumberWords.exact(((Saturation) adjustment).factor()) + "·(a, b)";
  }

  /** Stops as a power of two has them. */
  static String exponent(double stops) {
    return stops < 0 ? "(−" + NumberWords.exact(-stops) + ")" : NumberWords.exact(stops);
  }

  /** A formula of what a channel word names. */
  private static String on(Channel channel, String formula) {
    return switch (channel) {
      case RGB -> formula.replace("%s", "x");
      case LUMINANCE -> "Y → " + formula.replace("%s", "Y");
      case RED, GREEN, BLUE -> channel.key() + " → " + formula.replace("%s", channel.key());
    };
  }

  private static <T extends Record> String words(T record) {
    Shape<T> shape = Shape.of(record);
    List<String> parts = new ArrayList<>();
    for (Field field : shape.fields()) {
      Object value = shape.get(record, field);
      if (value != null && !value.equals(field.fallback())) {
        String unit = field.unit().symbol();
        String text = value(value) + (unit.isEmpty() ? "" : " " + unit);
        parts.add(field.isPrincipal() ? text : field.key() + " " + text);
      }
    }
    return shape.key() + (parts.isEmpty() ? "" : " " + String.join(", ", parts));
  }

  private static String value(Object value) {
    if (value instanceof Double number) {
      return NumberWords.exact(number);
    }
    if (value instanceof Keyed word) {
      return word.key();
    }
    if (value instanceof List<?> list) {
      return String.join(" ", list.stream().map(AdjustmentWords::value).toList());
    }
    if (value instanceof Record record) {
      return row(record);
    }
    return value.toString();
  }

  /** The values of a small record such as a point. */
  private static <T extends Record> String row(T record) {
    Shape<T> shape = Shape.of(record);
    List<String> values = new ArrayList<>();
    for (Field field : shape.fields()) {
      Object value = shape.get(record, field);
      values.add(value == null ? "" : value(value));
    }
    return String.join("→", values);
  }
}
