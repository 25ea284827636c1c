/**
 * From bytes to tokens with places, and back: YAML and JSON reading, canonical JSON, nearest names,
 * schema and reference page.
 */
@NullMarked
package org.duskply.recipe.text;

import org.jspecify.annotations.NullMarked;
