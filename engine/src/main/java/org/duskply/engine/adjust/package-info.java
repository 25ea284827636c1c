/**
 * One adjustment a file: parameters prepared for a working space, and the loop over pixels. Knows
 * neither graphs nor masks.
 */
@NullMarked
package org.duskply.engine.adjust;

import org.jspecify.annotations.NullMarked;
