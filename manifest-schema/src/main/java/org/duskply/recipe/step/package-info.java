/** One record a verb of a recipe's steps, with its Shape. */
@NullMarked
package org.duskply.recipe.step;

import org.jspecify.annotations.NullMarked;
