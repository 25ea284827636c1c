/** One record a kind of mask, with its Shape. */
@NullMarked
package org.duskply.recipe.mask;

import org.jspecify.annotations.NullMarked;
