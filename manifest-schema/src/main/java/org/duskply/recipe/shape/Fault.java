package org.duskply.recipe.shape;

/**
 * What a {@link Rule} found wrong.
 *
 * @param at path of the part below the record, {@code points/#3}; empty for the record itself
 * @param sentence what is wrong and what to write instead, for a photographer
 * @param found what was found, short
 * @param expected what would have been right, short
 */
public record Fault(String at, String sentence, String found, String expected) {}
