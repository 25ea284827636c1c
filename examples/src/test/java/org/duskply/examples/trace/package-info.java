/** Tests of the ray tracer. */
@NullMarked
package org.duskply.examples.trace;

import org.jspecify.annotations.NullMarked;
