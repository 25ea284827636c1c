/**
 * One blend mode a file: two linear pictures in, one out. Neither opacity nor masks nor axes are
 * known here.
 */
@NullMarked
package org.duskply.engine.blend;

import org.jspecify.annotations.NullMarked;
