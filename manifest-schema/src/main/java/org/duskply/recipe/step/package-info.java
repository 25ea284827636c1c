/**
 * One record a verb of a recipe's steps, with its Shape. Nothing here knows how a step is computed,
 * or which names a recipe has.
 */
@NullMarked
package org.duskply.recipe.step;

import org.jspecify.annotations.NullMarked;
