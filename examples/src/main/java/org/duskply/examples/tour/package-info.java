/** Makes the README's pictures of the demo. */
@NullMarked
package org.duskply.examples.tour;

import org.jspecify.annotations.NullMarked;
