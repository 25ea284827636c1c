/**
 * Neighbourhood operations, planes in and planes out: Gaussian, window mean, median, moved
 * outlines, resampling. Each value depends on absolute canvas coordinates and a finite window only.
 * Knows nothing of recipes, files or graphs.
 */
@NullMarked
package org.duskply.engine.filter;

import org.jspecify.annotations.NullMarked;
