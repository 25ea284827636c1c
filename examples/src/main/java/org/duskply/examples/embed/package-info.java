/** How a program uses the engine: what the README quotes, executed by a test. */
@NullMarked
package org.duskply.examples.embed;

import org.jspecify.annotations.NullMarked;
