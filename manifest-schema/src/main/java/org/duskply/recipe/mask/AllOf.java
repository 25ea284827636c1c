package org.duskply.recipe.mask;

import java.util.List;
import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;

/**
 * Only where all of several masks show: the product of them.
 *
 * @param members at least one; each keeps its own feather
 */
public record AllOf(List<MaskUse> members) implements MaskKind {
  /** How a recipe writes it. */
  public static final Shape<AllOf> SHAPE =
      Shape.mapping(
              AllOf.class,
              "all-of",
              "Only where all of several masks show: the product of them.",
              Field.of("members", new Kind.Items(MaskUse.KIND, "mask", 1, Limits.MEMBERS))
                  .key("all-of")
                  .principal()
                  .says("Names of masks, or masks written out; each keeps its own feather.")
                  .example("[facade, horizon]"))
          .example("all-of: [hull, sky]");

  /** Copies the list. */
  public AllOf {
    members = List.copyOf(members);
  }
}
