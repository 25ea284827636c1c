/** The command line. */
@NullMarked
package org.duskply.engine.command;

import org.jspecify.annotations.NullMarked;
