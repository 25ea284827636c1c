package org.duskply.recipe.step;

import java.util.List;
import org.duskply.recipe.adjust.Adjustment;

/**
 * A frame laid over the picture below by a blend mode, in linear light.
 *
 * @param frame name of the frame
 * @param blend how it is combined
 * @param treat adjustments of the incoming frame, in order
 */
public record Lay(String frame, Blend blend, List<Adjustment> treat) implements Verb {}
