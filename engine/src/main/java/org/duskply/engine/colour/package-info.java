/**
 * Primaries, transfer curves, ICC profiles by matrix or by tables, white points, gels and Oklab,
 * prepared in double precision. Profiles come as bytes; which of them counts for a frame is not
 * decided here.
 */
@NullMarked
package org.duskply.engine.colour;

import org.jspecify.annotations.NullMarked;
