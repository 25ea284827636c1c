package org.duskply.recipe.mask;

/** A mask where one is wanted: by its name, or written out on the spot. */
public sealed interface MaskUse {
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
