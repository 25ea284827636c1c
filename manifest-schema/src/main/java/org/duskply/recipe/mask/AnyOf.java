package org.duskply.recipe.mask;

import java.util.List;
import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;

/**
 * Wherever any of several masks shows: the greatest of them.
 *
 * @param members at least one; each keeps its own feather
 */
public record AnyOf(List<MaskUse> members) implements MaskKind {
  /** How a recipe writes it. */
  public static final Shape<AnyOf> SHAPE =
      Shape.mapping(
              AnyOf.class,
              "any-of",
              "Wherever any of several masks shows: the greatest of them.",
              Field.of("members", new Kind.Items(MaskUse.KIND, "mask", 1, Limits.MEMBERS))
                  .key("any-of")
                  .principal()
                  .says("Names of masks, or masks written out; each keeps its own feather.")
                  .example("[pane-1, pane-2]"))
          .example("any-of: [pane-1, pane-2]");

  /** Copies the list. */
  public AnyOf {
    members = List.copyOf(members);
  }
}
