/**
 * From a recipe's steps to nodes: what a verb makes of the picture below, and where it may show.
 * Mixing is left to {@code plan.Mix}, pixels to kernels of other rooms.
 */
@NullMarked
package org.duskply.engine.step;

import org.jspecify.annotations.NullMarked;
