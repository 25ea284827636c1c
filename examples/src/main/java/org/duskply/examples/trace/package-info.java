/**
 * A small ray tracer over analytic shapes: rays, shapes, a bounding-volume tree, noise. It knows
 * nothing of the scene that is made with it. Only +, −, ×, ÷ and square roots are used while
 * tracing, so every machine gives the same bits.
 */
@NullMarked
package org.duskply.examples.trace;

import org.jspecify.annotations.NullMarked;
