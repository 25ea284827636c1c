/**
 * One kind of mask a file, drawn, read off pictures or painted; what combines, moves and softens
 * them. A mask is a plane of weights: how steps are mixed by it is not known here.
 */
@NullMarked
package org.duskply.engine.mask;

import org.jspecify.annotations.NullMarked;
