/**
 * Neighbourhood operations, planes in and planes out: Gaussian, window mean, resampling. Each value
 * depends on absolute canvas coordinates and a finite window only.
 */
@NullMarked
package org.duskply.engine.filter;

import org.jspecify.annotations.NullMarked;
