/**
 * How a record looks as text: keys, kinds of value, units, ranges, defaults, sentences. Reader,
 * writer, schema, reference page, canonical form and the engine's explanations all walk these
 * Shapes; none of them knows a record by name.
 */
@NullMarked
package org.duskply.recipe.shape;

import org.jspecify.annotations.NullMarked;
