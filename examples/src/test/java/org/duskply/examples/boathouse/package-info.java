/** Tests of the demo scene and its frames. */
@NullMarked
package org.duskply.examples.boathouse;

import org.jspecify.annotations.NullMarked;
