package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.duskply.recipe.Frame;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Keyed;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.step.Adjust;
import org.duskply.recipe.step.Blend;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.step.Verb;
import org.jspecify.annotations.Nullable;

/** A step in words and as an equation: b the picture below, f a frame, m the mask. */
final class StepWords {
  private StepWords() {}

  /**
   * The step as a sentence.
   *
   * @param area share of the picture that its mask shows
   */
  static String sentence(Step step, double area, Recipe recipe) {
    return what(step.verb(), recipe) + where(step.mask(), area) + strength(step.opacity()) + ".";
  }

  /** The step as an equation. */
  static String formula(Step step) {
    String inside = inside(step.verb());
    String weight = weight(step);
    return weight.isEmpty() ? "out = " + inside : "out = b + " + weight + "·(" + inside + " − b)";
  }

  private static String what(Verb verb, Recipe recipe) {
    if (verb instanceof Pop pop) {
      return "lightens with " + frame(pop.frame(), recipe) + treated(pop.treat());
    }
    if (verb instanceof Lay lay) {
      String how = lay.blend() == Blend.NORMAL ? "" : " by " + lay.blend().key();
      return "lays " + frame(lay.frame(), recipe) + treated(lay.treat()) + " over it" + how;
    }
    if (verb instanceof Adjust adjust) {
      return "adjusts what is there: " + list(adjust.adjustments());
    }
    int steps = ((Group) verb).steps().size();
    return "does " + (steps == 1 ? "one step" : steps + " steps") + " together";
  }

  private static String frame(String name, Recipe recipe) {
    Frame frame = recipe.frames().get(name);
    return frame == null ? name : "the frame " + name + ", " + frame.file();
  }

  private static String treated(List<Adjustment> treat) {
    return treat.isEmpty() ? "" : " (treated with " + list(treat) + ")";
  }

  private static String list(List<Adjustment> adjustments) {
    List<String> words = new ArrayList<>();
    for (Adjustment adjustment : adjustments) {
      words.add(words((Record & Adjustment) adjustment));
    }
    return String.join(", then ", words);
  }

  /** An adjustment by its Shape: its key, and every field that is not as by default. */
  private static <T extends Record> String words(T record) {
    Shape<T> shape = Shape.of(record);
    List<String> parts = new ArrayList<>();
    for (Field field : shape.fields()) {
      Object value = shape.get(record, field);
      if (value != null && !value.equals(field.fallback())) {
        String text =
            value(value) + (field.unit().symbol().isEmpty() ? "" : " " + field.unit().symbol());
        parts.add(field.isPrincipal() ? text : field.key() + " " + text);
      }
    }
    return shape.key() + (parts.isEmpty() ? "" : " " + String.join(", ", parts));
  }

  private static String value(Object value) {
    if (value instanceof Double number) {
      return number(number);
    }
    if (value instanceof Keyed word) {
      return word.key();
    }
    if (value instanceof List<?> list) {
      return String.join(" ", list.stream().map(StepWords::value).toList());
    }
    if (value instanceof Record record) {
      return row(record);
    }
    return value.toString();
  }

  private static <T extends Record> String row(T record) {
    Shape<T> shape = Shape.of(record);
    List<String> values = new ArrayList<>();
    for (Field field : shape.fields()) {
      Object value = shape.get(record, field);
      values.add(value == null ? "" : value(value));
    }
    return String.join("→", values);
  }

  private static String where(@Nullable MaskUse mask, double area) {
    if (mask == null) {
      return ", everywhere";
    }
    String name = mask instanceof MaskUse.Named named ? "the mask " + named.name() : "its mask";
    return String.format(
        Locale.ROOT, ", where %s shows (%.1f %% of the picture)", name, 100 * area);
  }

  private static String strength(double opacity) {
    return opacity == 1 ? "" : ", at opacity " + number(opacity);
  }

  private static String weight(Step step) {
    boolean masked = step.mask() != null;
    if (step.opacity() == 1) {
      return masked ? "m" : "";
    }
    return (masked ? "m·" : "") + number(step.opacity());
  }

  private static String inside(Verb verb) {
    if (verb instanceof Pop pop) {
      return "max(b, " + frame(pop.treat()) + ")";
    }
    if (verb instanceof Lay lay) {
      String f = frame(lay.treat());
      return switch (lay.blend()) {
        case NORMAL -> f;
        case MULTIPLY -> "b·" + f;
        case SCREEN -> "screen(b, " + f + ")";
        case DARKEN -> "min(b, " + f + ")";
        case LIGHTEN -> "max(b, " + f + ")";
        case PLUS_LIGHTER -> "(b + " + f + ")";
      };
    }
    return verb instanceof Adjust ? "adjusted(b)" : "steps(b)";
  }

  private static String frame(List<Adjustment> treat) {
    return treat.isEmpty() ? "f" : "treated(f)";
  }

  private static String number(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e9
        ? Long.toString((long) value)
        : Double.toString(value);
  }
}
