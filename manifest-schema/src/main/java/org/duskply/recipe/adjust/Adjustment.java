package org.duskply.recipe.adjust;

import org.duskply.recipe.shape.Alternatives;
import org.duskply.recipe.shape.Kind;

/** One adjustment of a picture's light; a list of them is done in order. */
public sealed interface Adjustment
    permits Exposure, Curve, Ends, Power, Contrast, Gel, Saturation, Hue, Cdl, Shoulder {
  /** How a recipe writes one: a mapping with one key. */
  Kind KIND =
      new Kind.Tagged(
          Alternatives.one(
              Adjustment.class, "adjustment", "give each its own - and line, or its own { }"));
}
