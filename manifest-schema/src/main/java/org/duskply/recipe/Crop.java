package org.duskply.recipe;

import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Unit;

/**
 * The part of the picture that is kept, in whole pixels of the grid.
 *
 * @param left columns cut off at the left
 * @param top rows cut off at the top
 * @param width columns kept
 * @param height rows kept
 */
public record Crop(int left, int top, int width, int height) {
  /** How a recipe writes it. */
  public static final Shape<Crop> SHAPE =
      Shape.mapping(
              Crop.class,
              "crop",
              "The part of the picture that is kept; it must lie inside the grid.",
              side("left", 0, "Columns cut off at the left.", "120"),
              side("top", 0, "Rows cut off at the top.", "80"),
              side("width", 1, "Columns kept.", "5760"),
              side("height", 1, "Rows kept.", "3840"))
          .example("crop: { left: 120, top: 80, width: 5760, height: 3840 }");

  private static Field side(String component, int least, String sentence, String example) {
    return Field.whole(component, least, Limits.SIDE)
        .in(Unit.PIXELS)
        .says(sentence)
        .example(example);
  }

  /** Whether it lies inside a picture of that size. */
  public boolean inside(Size size) {
    return (long) left + width <= size.width() && (long) top + height <= size.height();
  }

  /** Says, at the path of a recipe's crop, that it reaches out of a grid of that size. */
  public Fault fault(Size grid) {
    String reaches = ((long) left + width) + " × " + ((long) top + height);
    String size = grid.width() + " × " + grid.height();
    return new Fault(
        "finish/crop",
        String.format(
            "the crop reaches to %s px, out of the grid of %s; left + width and top + height must"
                + " stay inside it",
            reaches, size),
        reaches,
        "at most " + size);
  }
}
