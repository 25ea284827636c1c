/**
 * What files are delivered: one record a part of it, with its Shape. Nothing here knows how a file
 * is written.
 */
@NullMarked
package org.duskply.recipe.deliver;

import org.jspecify.annotations.NullMarked;
