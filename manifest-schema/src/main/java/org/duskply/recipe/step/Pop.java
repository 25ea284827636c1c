package org.duskply.recipe.step;

import java.util.List;
import org.duskply.recipe.adjust.Adjustment;

/**
 * A frame with a flash pop, blended by lighten: the greater of the picture below and the frame,
 * channel by channel.
 *
 * @param frame name of the frame
 * @param treat adjustments of the incoming frame, in order
 */
public record Pop(String frame, List<Adjustment> treat) implements Verb {}
