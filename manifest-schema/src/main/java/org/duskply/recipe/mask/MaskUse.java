package org.duskply.recipe.mask;

import org.duskply.recipe.Limits;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;

/** A mask where one is wanted: by its name, or written out on the spot. */
public sealed interface MaskUse {
  /** How a recipe writes it: a name, or keys and values. */
  Kind KIND = new Kind.NamedOr(NameList.MASKS, () -> Mask.SHAPE, new MaskUseForms());

  /** How a recipe writes several of them. */
  Kind LIST = new Kind.Items(KIND, "mask", 0, Limits.MEMBERS);

  /**
   * A mask of the recipe's list.
   *
   * @param name its name there
   */
  record Named(String name) implements MaskUse {}

  /**
   * A mask written out.
   *
   * @param mask the mask
   */
  record Inline(Mask mask) implements MaskUse {}
}
