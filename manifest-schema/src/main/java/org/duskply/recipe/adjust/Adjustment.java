package org.duskply.recipe.adjust;

/** One adjustment of a picture's light; a list of them is done in order. */
public sealed interface Adjustment permits Exposure, Curve, Power, Contrast, Saturation {}
