/** One record an adjustment, with its Shape. What it does to pixels is not known here. */
@NullMarked
package org.duskply.recipe.adjust;

import org.jspecify.annotations.NullMarked;
