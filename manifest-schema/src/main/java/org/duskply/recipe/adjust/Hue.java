package org.duskply.recipe.adjust;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Rule;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;
import org.duskply.recipe.shape.Values;
import org.jspecify.annotations.Nullable;

/**
 * Colours turned, strengthened and lightened in Oklab: those of a range of hues, or all.
 *
 * @param turn degrees by which the hue turns, from red towards yellow, green and blue
 * @param chroma factor of the distance from grey
 * @param lightness what is added to Oklab's lightness, which runs from 0 to 1
 * @param centre hue in the middle of the range; absent: all colours
 * @param width whole width of the range that is changed in full; present where {@code centre} is
 * @param soft degrees over which the change fades out, on each side of the range
 */
public record Hue(
    double turn,
    double chroma,
    double lightness,
    @Nullable Double centre,
    @Nullable Double width,
    double soft)
    implements Adjustment {
  /** How a recipe writes it. */
  public static final Shape<Hue> SHAPE =
      Shape.mapping(
              Hue.class,
              "hue",
              "Colours turned, strengthened and lightened in Oklab: those of a range of hues, or"
                  + " all.",
              Field.number("turn")
                  .from(-180)
                  .to(180)
                  .in(Unit.DEGREES)
                  .byDefault(0.0)
                  .says("Turns the hue: plus from red towards yellow, green and blue.")
                  .example("-6"),
              Field.number("chroma")
                  .from(0)
                  .to(4)
                  .byDefault(1.0)
                  .says("Strength of the colour: 0 is grey, 1 leaves it.")
                  .example("1.15"),
              Field.number("lightness")
                  .from(-1)
                  .to(1)
                  .byDefault(0.0)
                  .says("Added to Oklab's lightness, which is 0 in black and 1 in white.")
                  .example("0.02"),
              Field.number("centre")
                  .from(-360)
                  .to(360)
                  .in(Unit.DEGREES)
                  .optional("all colours")
                  .says(
                      "Middle of the range of hues that changes, in Oklab: red is near 29, yellow"
                          + " 110, green 142, blue 264.")
                  .example("260"),
              Field.number("width")
                  .from(1)
                  .to(360)
                  .in(Unit.DEGREES)
                  .optional("only without `centre`")
                  .says("Whole width of the range, where the change is full.")
                  .example("70"),
              Field.number("soft")
                  .from(0)
                  .to(180)
                  .in(Unit.DEGREES)
                  .byDefault(0.0)
                  .says("How far the change fades out on each side of the range.")
                  .example("20"))
          .rules(new Rule(List.of("centre", "width", "soft"), Hue::faults))
          .identity(hue -> hue.turn == 0 && hue.chroma == 1 && hue.lightness == 0)
          .example("hue: { centre: 260, width: 70, soft: 20, turn: -6, chroma: 1.15 }");

  private static List<Fault> faults(Values values) {
    boolean centre = values.get("centre") != null;
    boolean width = values.get("width") != null;
    List<Fault> faults = new ArrayList<>();
    if (centre && !width) {
      faults.add(
          new Fault(
              "centre",
              "`centre` needs `width` as well: how wide the range of hues is, such as width: 60",
              "centre alone",
              "centre and width"));
    }
    if (!centre && width) {
      faults.add(withoutCentre("width"));
    }
    if (!centre && values.get("soft", Double.class) != 0) {
      faults.add(withoutCentre("soft"));
    }
    return faults;
  }

  private static Fault withoutCentre(String key) {
    return new Fault(
        key,
        "`" + key + "` belongs to a range of hues; give the range its `centre`, or delete it",
        key + " alone",
        "centre and width");
  }
}
