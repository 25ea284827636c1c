/**
 * Plain double precision, straight from the formulas, sharing no code with what it checks: slow,
 * short, to be read beside the source.
 */
@NullMarked
package org.duskply.engine.testing.reference;

import org.jspecify.annotations.NullMarked;
