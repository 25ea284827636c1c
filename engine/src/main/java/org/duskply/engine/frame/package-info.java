/** From files to native samples to linear planes. */
@NullMarked
package org.duskply.engine.frame;

import org.jspecify.annotations.NullMarked;
