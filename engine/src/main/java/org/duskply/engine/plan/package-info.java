/**
 * The graph of nodes: what is computed from what, where, and at which cost; the one mixing
 * equation; and how point operations are fused. Knows no kind of step, mask or adjustment, and no
 * threads.
 */
@NullMarked
package org.duskply.engine.plan;

import org.jspecify.annotations.NullMarked;
