/** What tests of several rooms share: tolerances, references, files built byte by byte. */
@NullMarked
package org.duskply.engine.testing;

import org.jspecify.annotations.NullMarked;
