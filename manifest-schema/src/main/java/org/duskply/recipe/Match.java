package org.duskply.recipe;

import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Shape;

/**
 * One frame brought to the exposure of another, as if both had been taken with the same settings.
 *
 * @param frame the frame whose exposure is taken over, its own {@code exposure} included; it may
 *     not be matched itself
 * @param by how the difference is found
 */
public record Match(String frame, MatchBy by) {
  /** How a recipe writes it. */
  public static final Shape<Match> SHAPE =
      Shape.mapping(
              Match.class,
              "match",
              "Brings a frame to the exposure of another, which may not be matched itself.",
              Field.of("frame", new Kind.Mention(NameList.FRAMES))
                  .says("The frame whose exposure is taken over, its own `exposure` included.")
                  .example("dusk"),
              Field.word("by", MatchBy.values())
                  .says(
                      "How the difference is found: exif, from time, aperture and sensitivity in"
                          + " the two files.")
                  .example("exif"))
          .example("pop-willow: { file: frames/bh-0013.tif, match: { frame: dusk, by: exif } }");
}
