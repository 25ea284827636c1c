/**
 * Whole composites to be timed as processes: their frames, recipes, and plans for other libraries.
 */
@NullMarked
package org.duskply.benchmarks.workload;

import org.jspecify.annotations.NullMarked;
