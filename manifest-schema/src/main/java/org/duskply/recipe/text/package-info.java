/**
 * From bytes to tokens with places, and back: YAML and JSON reading, canonical JSON, nearest names,
 * schema and reference page. Knows no record of the recipe by name; the only room that knows the
 * parser.
 */
@NullMarked
package org.duskply.recipe.text;

import org.jspecify.annotations.NullMarked;
