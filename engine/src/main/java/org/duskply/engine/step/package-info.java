/** From a recipe's steps to nodes. */
@NullMarked
package org.duskply.engine.step;

import org.jspecify.annotations.NullMarked;
