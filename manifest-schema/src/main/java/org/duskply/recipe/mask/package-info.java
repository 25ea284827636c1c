/**
 * One record a kind of mask, with its Shape. Nothing here knows how a mask is filled, or which
 * names a recipe has.
 */
@NullMarked
package org.duskply.recipe.mask;

import org.jspecify.annotations.NullMarked;
