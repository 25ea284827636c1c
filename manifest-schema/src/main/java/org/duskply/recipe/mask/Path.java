package org.duskply.recipe.mask;

/**
 * The inside of an outline written as SVG path data; curves are followed to within 0.01 px.
 *
 * @param data SVG 2 path data, all commands, absolute or relative; each subpath is closed by itself
 * @param rule what counts as inside where the outline crosses itself
 */
public record Path(String data, FillRule rule) implements MaskKind {}
