/**
 * SVG drawings from strangers: from bytes to the outlines of shapes, with every limit named. Knows
 * outlines alone, no strokes, colours, clips or texts, and nothing of pictures.
 */
@NullMarked
package org.duskply.engine.svg;

import org.jspecify.annotations.NullMarked;
