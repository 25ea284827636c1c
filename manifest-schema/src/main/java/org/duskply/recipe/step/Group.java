package org.duskply.recipe.step;

import java.util.List;

/**
 * Steps folded over the picture below and then mixed in as one.
 *
 * @param steps from the first done to the last; at least one
 */
public record Group(List<Step> steps) implements Verb {}
