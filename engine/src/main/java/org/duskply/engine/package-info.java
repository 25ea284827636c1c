/**
 * The library's front door: {@link org.duskply.engine.Engine}, {@code Composite}, {@code View},
 * progress and exceptions; behind it what brings a recipe and its files together, and the words of
 * explanations. Pixels are computed in other rooms, and nothing is printed.
 */
@NullMarked
package org.duskply.engine;

import org.jspecify.annotations.NullMarked;
