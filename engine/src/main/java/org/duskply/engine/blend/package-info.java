/** One blend mode a file. */
@NullMarked
package org.duskply.engine.blend;

import org.jspecify.annotations.NullMarked;
