package org.duskply.recipe.mask;

import org.duskply.recipe.FilePaths;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;

/**
 * A mask painted in a picture file: each pixel's stored value over full scale.
 *
 * @param file path of the file, relative to the recipe's folder
 */
public record Image(String file) implements MaskKind {
  /** How a recipe writes it. */
  public static final Shape<Image> SHAPE =
      Shape.mapping(
              Image.class,
              "image",
              "A grey picture as a mask: black is 0, white is 1, a stored half is a half; its"
                  + " colour profile and its transparency are not used.",
              Field.of("file", new Kind.File(true, FilePaths::painting))
                  .key("image")
                  .principal()
                  .says(
                      "The file, by its path from the recipe's folder; it has the size of the grid"
                          + " or of the base.")
                  .example("masks/pontoon.png"))
          .example("image: masks/pontoon.png");
}
