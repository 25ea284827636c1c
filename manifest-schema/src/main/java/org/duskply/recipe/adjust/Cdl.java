package org.duskply.recipe.adjust;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.PerChannel;
import org.duskply.recipe.shape.Shape;

/**
 * Slope, offset, power and saturation of the ASC Color Decision List, version 1.2.
 *
 * @param slope factor of each channel
 * @param offset added after it
 * @param power of what is above 0 then; what is below stays
 * @param saturation distance of the channels from their luma, 0.2126, 0.7152 and 0.0722 of them
 * @param axis of the values that these numbers are for
 * @param clamp whether values are held to 0 and 1 as the standard has it, before the power and at
 *     the end; else what is brighter than white goes on
 */
public record Cdl(
    PerChannel slope,
    PerChannel offset,
    PerChannel power,
    double saturation,
    Axis axis,
    boolean clamp)
    implements Adjustment {
  /** How a recipe writes it. */
  public static final Shape<Cdl> SHAPE =
      Shape.mapping(
              Cdl.class,
              "cdl",
              "Slope, offset, power and saturation of the ASC Color Decision List, version 1.2.",
              Field.number("slope")
                  .from(0)
                  .to(100)
                  .perChannel()
                  .byDefault(PerChannel.all(1))
                  .says("Factor of each channel.")
                  .example("[1.05, 1, 0.95]"),
              Field.number("offset")
                  .from(-10)
                  .to(10)
                  .perChannel()
                  .byDefault(PerChannel.all(0))
                  .says("Added to each channel after the slope.")
                  .example("[0.01, 0, -0.01]"),
              Field.number("power")
                  .from(0.05)
                  .to(20)
                  .perChannel()
                  .byDefault(PerChannel.all(1))
                  .says("Power of each channel after that; what is below 0 is left.")
                  .example("1.1"),
              Field.number("saturation")
                  .from(0)
                  .to(10)
                  .byDefault(1.0)
                  .says("Distance of the three from their luma: 0 is grey, 1 leaves them.")
                  .example("0.9"),
              Field.word("axis", Axis.values())
                  .byDefault(Axis.ENCODED)
                  .says("Whether the numbers are for values as the screen shows them or for light.")
                  .example("linear"),
              Field.flag("clamp")
                  .says(
                      "Holds values to 0 and 1 exactly as the standard has it; left out, what is"
                          + " brighter than white goes on.")
                  .example("true"))
          .identity(Cdl::neutral)
          .example("cdl: { slope: [1.05, 1, 0.95], offset: 0.01, power: 1.1, saturation: 0.9 }");

  private boolean neutral() {
    return !clamp && saturation == 1 && all(slope, 1) && all(offset, 0) && all(power, 1);
  }

  private static boolean all(PerChannel three, double value) {
    return three.even() && three.red() == value;
  }
}
