package org.duskply.recipe.adjust;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Shape;

/**
 * Contrast about a pivot in linear light.
 *
 * @param strength 0 leaves the picture, plus steepens
 * @param pivot the linear value that stays, 0.18 being a grey card
 * @param channel what it acts on
 */
public record Contrast(double strength, double pivot, Channel channel) implements Adjustment {
  /** How a recipe writes it. */
  public static final Shape<Contrast> SHAPE =
      Shape.mapping(
              Contrast.class,
              "contrast",
              "Contrast about a pivot, in linear light.",
              Field.number("strength")
                  .from(-0.9)
                  .to(4)
                  .principal()
                  .says("0 leaves the picture, plus steepens, minus flattens.")
                  .example("0.15"),
              Field.number("pivot")
                  .from(0.0001)
                  .to(1)
                  .byDefault(0.18)
                  .says("The linear value that stays; 0.18 is a grey card.")
                  .example("0.18"),
              Field.word("channel", Channel.values())
                  .byDefault(Channel.LUMINANCE)
                  .says("luminance keeps hues, rgb treats each channel alone; or only one of them.")
                  .example("rgb"))
          .identity(contrast -> contrast.strength() == 0)
          .example("contrast: { strength: 0.15, pivot: 0.18 }");
}
