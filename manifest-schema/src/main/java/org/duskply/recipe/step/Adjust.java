package org.duskply.recipe.step;

import java.util.List;
import org.duskply.recipe.adjust.Adjustment;

/**
 * Adjustments of the picture below.
 *
 * @param adjustments done in order; at least one
 */
public record Adjust(List<Adjustment> adjustments) implements Verb {}
