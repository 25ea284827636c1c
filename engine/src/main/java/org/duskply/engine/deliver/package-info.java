/** Finished pictures into files: resize, encoders, safe writing. */
@NullMarked
package org.duskply.engine.deliver;

import org.jspecify.annotations.NullMarked;
