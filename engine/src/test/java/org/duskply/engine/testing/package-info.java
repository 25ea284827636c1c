/** What tests share: tolerances, deterministic pictures, edge values, and contracts of kernels. */
@NullMarked
package org.duskply.engine.testing;

import org.jspecify.annotations.NullMarked;
