package org.duskply.recipe.mask;

import java.util.List;

/** What a mask starts from. */
public sealed interface MaskKind
    permits Polygon,
        Path,
        AnyOf,
        AllOf,
        Ellipse,
        Svg,
        Gradient,
        Luminance,
        Hues,
        Image,
        Strokes,
        Flash,
        ShownSteps {
  /** The masks that it is made of. */
  default List<MaskUse> members() {
    return List.of();
  }

  /** Whether it depends on the picture below the step that uses the mask. */
  default boolean readsBelow() {
    return false;
  }
}
