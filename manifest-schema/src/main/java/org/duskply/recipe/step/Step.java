package org.duskply.recipe.step;

import java.util.Map;
import org.duskply.recipe.mask.MaskUse;
import org.jspecify.annotations.Nullable;

/**
 * One step: what is done, and the keys that every step may have.
 *
 * @param id name for references; absent: see {@code StepNames}
 * @param title for people
 * @param notes for people
 * @param mask where the step shows; absent: everywhere
 * @param opacity 0 to 1
 * @param skip whether the step is left out
 * @param verb what is done
 * @param extensions the user's own {@code x-} keys
 */
public record Step(
    @Nullable String id,
    @Nullable String title,
    @Nullable String notes,
    @Nullable MaskUse mask,
    double opacity,
    boolean skip,
    Verb verb,
    Map<String, Object> extensions) {}
