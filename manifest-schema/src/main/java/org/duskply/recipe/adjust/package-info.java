/** One record an adjustment, with its Shape. */
@NullMarked
package org.duskply.recipe.adjust;

import org.jspecify.annotations.NullMarked;
