package org.duskply.recipe;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One exposure from the tripod.
 *
 * @param file path of the frame's file, relative to the recipe's folder
 * @param exposure change of exposure on loading, in stops
 * @param profile colour space to assume in place of what the file says; absent: the file's own
 * @param extensions the user's own {@code x-} keys
 */
public record Frame(
    String file, double exposure, @Nullable NamedSpace profile, Map<String, Object> extensions) {}
