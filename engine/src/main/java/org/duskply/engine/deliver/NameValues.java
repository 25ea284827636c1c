package org.duskply.engine.deliver;

import java.time.LocalDateTime;
import org.jspecify.annotations.Nullable;

/**
 * What the placeholders of a deliverable's file name stand for.
 *
 * @param recipe stem of the recipe's file
 * @param title of the recipe
 * @param alternate name of the alternate
 * @param deliverable name of the deliverable
 * @param width of the delivered picture
 * @param height of the delivered picture
 * @param shot when the base frame was taken, or absent where its file does not say
 */
public record NameValues(
    String recipe,
    String title,
    String alternate,
    String deliverable,
    int width,
    int height,
    @Nullable LocalDateTime shot) {}
