/**
 * The command line: words into calls of the front door, answers into text and exit codes. The only
 * room that prints or looks at the terminal; no rule of recipes or pictures stands here.
 */
@NullMarked
package org.duskply.engine.command;

import org.jspecify.annotations.NullMarked;
