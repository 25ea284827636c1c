/** What tests of several packages share: a tolerance, sequences, double references, a metric. */
@NullMarked
package org.duskply.engine.testing;

import org.jspecify.annotations.NullMarked;
