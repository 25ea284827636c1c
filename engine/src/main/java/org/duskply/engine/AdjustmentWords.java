package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Keyed;
import org.duskply.recipe.shape.PerChannel;
import org.duskply.recipe.shape.Shape;

/** Adjustments in words. */
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

  /** A list as equations, in order: see {@link AdjustmentFormula}. */
  static String formulas(List<Adjustment> adjustments) {
    return String.join(", then ", adjustments.stream().map(AdjustmentFormula::of).toList());
  }

  /** Stops as a power of two has them. */
  static String exponent(double stops) {
    return stops < 0 ? "(−" + NumberWords.exact(-stops) + ")" : NumberWords.exact(stops);
  }

  private static <T extends Record> String words(T record) {
    Shape<T> shape = Shape.of(record);
    List<String> parts = new ArrayList<>();
    for (Field field : shape.fields()) {
      Object value = shape.get(record, field);
      if (value != null && !value.equals(field.fallback())) {
        parts.add(part(field, value));
      }
    }
    String words = shape.key() + (parts.isEmpty() ? "" : " " + String.join(", ", parts));
    return record instanceof Gel ? words.replace(" kelvin, to ", " to ") : words;
  }

  /** A key and its value; the principal field's value alone, a flag's key alone. */
  private static String part(Field field, Object value) {
    if (value instanceof Boolean) {
      return field.key();
    }
    String unit = field.unit().symbol();
    String text = value(value) + (unit.isEmpty() ? "" : " " + unit);
    return field.isPrincipal() ? text : field.key() + " " + text;
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
    if (value instanceof PerChannel three) {
      String[] each = {value(three.red()), value(three.green()), value(three.blue())};
      return three.even() ? each[0] : "red " + each[0] + " green " + each[1] + " blue " + each[2];
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
