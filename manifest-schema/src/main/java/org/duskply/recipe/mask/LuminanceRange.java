package org.duskply.recipe.mask;

import java.util.List;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Rule;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Values;
import org.jspecify.annotations.Nullable;

/**
 * A range of luminance as the screen shows it, encoded, 0 black to 1 white.
 *
 * @param from least luminance that counts fully; absent: there is none
 * @param to greatest luminance that counts fully; absent: there is none
 * @param soft how far outside each bound the mask falls to nothing
 * @param frame whose luminance; absent: that of the picture below the step
 */
public record LuminanceRange(
    @Nullable Double from, @Nullable Double to, double soft, @Nullable String frame) {
  private static final double BRIGHTEST = 4;

  /** How a recipe writes it. */
  public static final Shape<LuminanceRange> SHAPE =
      Shape.mapping(
              LuminanceRange.class,
              "luminance range",
              "A range of brightness as the screen shows it: 0 is black, 0.5 a middle grey, 1"
                  + " white; light above white goes on beyond 1.",
              Field.number("from")
                  .from(0)
                  .to(BRIGHTEST)
                  .optional("from the darkest on")
                  .says("The least brightness that counts fully.")
                  .example("0.6"),
              Field.number("to")
                  .from(0)
                  .to(BRIGHTEST)
                  .optional("up to the brightest")
                  .says("The greatest brightness that counts fully.")
                  .example("0.25"),
              Field.number("soft")
                  .from(0)
                  .to(BRIGHTEST)
                  .byDefault(0.0)
                  .says("How far outside each bound the mask falls to nothing, smoothly.")
                  .example("0.1"),
              Field.of("frame", new Kind.Mention(NameList.FRAMES))
                  .optional("the picture below the step that uses the mask")
                  .says("The frame whose brightness counts.")
                  .example("dusk"))
          .rules(new Rule(List.of("from", "to"), LuminanceRange::faults))
          .example("{ from: 0.6, soft: 0.1, frame: dusk }");

  private static List<Fault> faults(Values values) {
    Double from = (Double) values.get("from");
    Double to = (Double) values.get("to");
    if (from == null && to == null) {
      return List.of(
          new Fault(
              "",
              "this says no brightness; give from, to, or both, such as { to: 0.25, soft: 0.1 }",
              "no bound",
              "from, to, or both"));
    }
    if (from != null && to != null && from > to) {
      return List.of(
          new Fault(
              "from",
              "from is above to, so no brightness lies between them; exchange the two",
              from + " to " + to,
              "from at most to"));
    }
    return List.of();
  }
}
