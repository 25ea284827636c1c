/** One record a kind of delivered file, with its Shape. */
@NullMarked
package org.duskply.recipe.deliver;

import org.jspecify.annotations.NullMarked;
