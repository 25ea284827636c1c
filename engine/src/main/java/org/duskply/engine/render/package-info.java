/**
 * Bands through the graph: which are needed, tasks and their order, the ledger of memory, threads,
 * the store of finished work. Knows no recipe, and of a node only its footprints, keys and costs.
 */
@NullMarked
package org.duskply.engine.render;

import org.jspecify.annotations.NullMarked;
