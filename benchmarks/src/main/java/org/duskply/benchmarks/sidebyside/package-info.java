/**
 * Whole composites, timed as whole processes in turn with general-purpose libraries that do the
 * same work.
 */
@NullMarked
package org.duskply.benchmarks.sidebyside;

import org.jspecify.annotations.NullMarked;
