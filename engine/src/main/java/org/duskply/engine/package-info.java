/** The library's front door: {@code Engine}, {@code Composite}, progress and exceptions. */
@NullMarked
package org.duskply.engine;

import org.jspecify.annotations.NullMarked;
