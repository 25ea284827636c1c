/**
 * The recipe as a value: what the file says, where it says it, and what is wrong with it as a
 * whole. Nothing here touches pixels or reads frames.
 */
@NullMarked
package org.duskply.recipe;

import org.jspecify.annotations.NullMarked;
