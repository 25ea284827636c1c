package org.duskply.recipe.mask;

import java.util.List;

/**
 * Wherever any of several masks shows: the greatest of them.
 *
 * @param members at least one; each keeps its own feather
 */
public record AnyOf(List<MaskUse> members) implements MaskKind {}
