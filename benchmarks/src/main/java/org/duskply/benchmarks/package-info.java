/** How fast the kernels are, in megapixels a second, each with its answer checked first. */
@NullMarked
package org.duskply.benchmarks;

import org.jspecify.annotations.NullMarked;
