/** The formulas of standards and papers in plain double, as they are printed. Slow on purpose. */
@NullMarked
package org.duskply.engine.testing.reference;

import org.jspecify.annotations.NullMarked;
