/**
 * How fast the engine's kernels are, one kind a file, and the table of their megapixels a second
 * ({@link org.duskply.benchmarks.kernels.KernelTable}). Every answer is compared with the formula
 * in double before it is timed.
 */
@NullMarked
package org.duskply.benchmarks.kernels;

import org.jspecify.annotations.NullMarked;
