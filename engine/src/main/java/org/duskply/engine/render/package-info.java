/** Bands through the graph: tasks, ledger, store. */
@NullMarked
package org.duskply.engine.render;

import org.jspecify.annotations.NullMarked;
