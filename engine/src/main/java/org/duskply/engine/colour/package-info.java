/**
 * Primaries, transfer curves, ICC profiles, white points and Oklab, prepared in double precision.
 */
@NullMarked
package org.duskply.engine.colour;

import org.jspecify.annotations.NullMarked;
