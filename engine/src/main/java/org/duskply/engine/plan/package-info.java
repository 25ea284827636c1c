/** The graph of nodes: what is computed from what, where, and at which cost. */
@NullMarked
package org.duskply.engine.plan;

import org.jspecify.annotations.NullMarked;
