/** One kind of mask a file: outlines, combinations, feather. */
@NullMarked
package org.duskply.engine.mask;

import org.jspecify.annotations.NullMarked;
