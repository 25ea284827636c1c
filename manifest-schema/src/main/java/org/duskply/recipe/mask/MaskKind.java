package org.duskply.recipe.mask;

/** What a mask starts from. */
public sealed interface MaskKind permits Polygon, Path, AnyOf, AllOf, Ellipse, Svg, Gradient {}
