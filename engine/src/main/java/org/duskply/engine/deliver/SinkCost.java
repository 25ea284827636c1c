package org.duskply.engine.deliver;

import java.util.function.IntToLongFunction;

/**
 * What a {@link Sink} takes of memory, known before anything is opened.
 *
 * @param encodeBytes most bytes that encoding so many rows takes while it runs, its result included
 * @param heldBytes bytes that are held from the opening to the commit
 */
public record SinkCost(IntToLongFunction encodeBytes, long heldBytes) {}
