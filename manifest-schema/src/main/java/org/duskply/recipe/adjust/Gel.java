package org.duskply.recipe.adjust;

import java.util.List;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Rule;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;
import org.duskply.recipe.shape.Values;
import org.jspecify.annotations.Nullable;

/**
 * The light as if it had come through a gel: either a shift in mired, or from the colour of one
 * light to that of another, or plus-green alone.
 *
 * @param mired plus warms, minus cools; absent where {@code from} and {@code to} say it
 * @param from kelvin of the light as it was; only together with {@code to}
 * @param to kelvin of the light as it is to be
 * @param plusGreen thousandths of CIE 1960 uv above the locus, by which the new colour is greener;
 *     below 0 it is more magenta
 */
public record Gel(
    @Nullable Double mired, @Nullable Double from, @Nullable Double to, double plusGreen)
    implements Adjustment {
  /** The warmest light that {@code from} and {@code to} may name. */
  public static final double WARMEST = 1667;

  /** The coolest light that {@code from} and {@code to} may name. */
  public static final double COOLEST = 25_000;

  /** How a recipe writes it. */
  public static final Shape<Gel> SHAPE =
      Shape.mapping(
              Gel.class,
              "gel",
              "The light as if it had come through a gel: a shift in mired, or from the colour of"
                  + " one light to that of another.",
              Field.number("mired")
                  .from(-320)
                  .to(320)
                  .in(Unit.MIRED)
                  .optional("given by `from` and `to`")
                  .principal()
                  .says("Plus warms, minus cools; minus a number undoes plus the same.")
                  .example("42"),
              Field.number("from")
                  .from(WARMEST)
                  .to(COOLEST)
                  .in(Unit.KELVIN)
                  .optional("given by `mired`")
                  .says("Colour of the light as it was.")
                  .example("3000"),
              Field.number("to")
                  .from(WARMEST)
                  .to(COOLEST)
                  .in(Unit.KELVIN)
                  .optional("given by `mired`")
                  .says("Colour of the light as it is to be; a higher number is bluer.")
                  .example("3600"),
              Field.number("plusGreen")
                  .from(-50)
                  .to(50)
                  .byDefault(0.0)
                  .says(
                      "How much greener the new colour is, in thousandths of CIE 1960 uv above the"
                          + " line of such lights; minus is towards magenta.")
                  .example("5"))
          .rules(new Rule(List.of("mired", "from", "to", "plusGreen"), Gel::faults))
          .identity(Gel::clear)
          .example("gel: { from: 3000, to: 3600 }");

  private boolean clear() {
    boolean unshifted = mired == null || mired == 0;
    return plusGreen == 0 && unshifted && (from == null || from.equals(to));
  }

  private static List<Fault> faults(Values values) {
    Object mired = values.get("mired");
    Object from = values.get("from");
    Object to = values.get("to");
    if (mired != null && (from != null || to != null)) {
      String second = from != null ? "from" : "to";
      return fault(
          second,
          "a gel is given either by `mired` or by `from` and `to`, not by both; delete one",
          "mired and " + second);
    }
    if ((from == null) != (to == null)) {
      String there = from == null ? "to" : "from";
      String missing = from == null ? "from" : "to";
      return fault(
          there,
          String.format(
              "a gel with `%s` needs `%s` as well: the light as it was and as it is to be, in"
                  + " kelvin",
              there, missing),
          there + " alone");
    }
    boolean empty = mired == null && from == null;
    if (empty && values.get("plusGreen", Double.class) == 0) {
      return fault("", "this gel says nothing; give it `mired`, or `from` and `to`", "neither");
    }
    return List.of();
  }

  private static List<Fault> fault(String at, String sentence, String found) {
    return List.of(new Fault(at, sentence, found, "mired, or from and to"));
  }
}
