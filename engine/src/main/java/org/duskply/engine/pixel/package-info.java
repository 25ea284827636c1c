/**
 * Rectangles, planes of floats, runs of a mask, and the numbers that kernels may use. Knows nothing
 * of recipes, files or graphs.
 */
@NullMarked
package org.duskply.engine.pixel;

import org.jspecify.annotations.NullMarked;
