package org.duskply.recipe.mask;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A mask: one kind, then in this order {@code within} (times), {@code except} (times one minus),
 * {@code feather}, {@code inverted}, {@code strength}.
 *
 * @param kind what the mask starts from; absent: everywhere
 * @param within masks that it is multiplied by
 * @param except masks that it is multiplied by the rest of
 * @param feather radius of the Gaussian that softens it, in pixels of the grid; σ is half of it
 * @param inverted whether the result is taken from one
 * @param strength factor of the result, 0 to 1
 * @param extensions the user's own {@code x-} keys
 */
public record Mask(
    @Nullable MaskKind kind,
    List<MaskUse> within,
    List<MaskUse> except,
    double feather,
    boolean inverted,
    double strength,
    Map<String, Object> extensions) {}
