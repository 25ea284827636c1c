package org.duskply.recipe.mask;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;
import org.jspecify.annotations.Nullable;

/**
 * A range of hues in Oklab, in degrees.
 *
 * @param centre the hue in its middle
 * @param width of all hues that count fully
 * @param soft degrees on each side over which the mask falls to nothing
 * @param frame whose hue; absent: that of the picture below the step
 */
public record HueRange(double centre, double width, double soft, @Nullable String frame) {
  /** How a recipe writes it. */
  public static final Shape<HueRange> SHAPE =
      Shape.mapping(
              HueRange.class,
              "hue range",
              "A range of hues in degrees of Oklab: 29 is red, 110 yellow, 142 green, 195 cyan, 264"
                  + " blue, 328 magenta.",
              Field.number("centre")
                  .from(-360)
                  .to(360)
                  .in(Unit.DEGREES)
                  .says("The hue in the middle.")
                  .example("255"),
              Field.number("width")
                  .from(1)
                  .to(360)
                  .in(Unit.DEGREES)
                  .says("Width of all hues that count fully.")
                  .example("60"),
              Field.number("soft")
                  .from(0)
                  .to(180)
                  .in(Unit.DEGREES)
                  .byDefault(0.0)
                  .says("How far beyond, on each side, the mask falls to nothing, smoothly.")
                  .example("20"),
              Field.of("frame", new Kind.Mention(NameList.FRAMES))
                  .optional("the picture below the step that uses the mask")
                  .says("The frame whose hue counts.")
                  .example("dusk"))
          .example("{ centre: 255, width: 60, soft: 20 }");
}
