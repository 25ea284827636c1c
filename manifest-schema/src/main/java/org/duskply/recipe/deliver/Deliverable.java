package org.duskply.recipe.deliver;

import java.util.Map;
import org.duskply.recipe.NamedSpace;
import org.jspecify.annotations.Nullable;

/**
 * One finished file.
 *
 * @param file path relative to the output folder, with placeholders; its ending gives the format
 * @param format what is written
 * @param depth bits a sample, 8 or 16
 * @param profile colour space of the file
 * @param compress how a TIFF is packed
 * @param quality of a JPEG, 0 to 1
 * @param longEdge longest side in pixels; absent: the picture's own size
 * @param extensions the user's own {@code x-} keys
 */
public record Deliverable(
    String file,
    Format format,
    int depth,
    NamedSpace profile,
    Compress compress,
    double quality,
    @Nullable Integer longEdge,
    Map<String, Object> extensions) {}
