package org.duskply.recipe;

import java.util.List;
import java.util.Map;
import org.duskply.recipe.deliver.Deliverable;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.step.Step;
import org.jspecify.annotations.Nullable;

/**
 * A whole recipe, checked: every name it mentions exists, every number is in its range.
 *
 * @param version format version; 1
 * @param needs lowest schema revision that knows every key used
 * @param title what the picture is called, for people and file names
 * @param notes the photographer's own words
 * @param grid the size on which positions and lengths were read; absent: the base's own size
 * @param base name of the frame that the picture starts from
 * @param working primaries of the linear working space; absent: those of the base frame's profile
 * @param frames frames by name, in the order of the file
 * @param masks masks by name, in the order of the file
 * @param steps from the first done to the last
 * @param deliverables files for the client by name, in the order of the file
 * @param extensions the user's own {@code x-} keys, kept as they are
 * @param places where in the file each part stands
 */
public record Recipe(
    int version,
    int needs,
    @Nullable String title,
    @Nullable String notes,
    @Nullable Size grid,
    String base,
    @Nullable NamedSpace working,
    Map<String, Frame> frames,
    Map<String, Mask> masks,
    List<Step> steps,
    Map<String, Deliverable> deliverables,
    Map<String, Object> extensions,
    Places places) {}
