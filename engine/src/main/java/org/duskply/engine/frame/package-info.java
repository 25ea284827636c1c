/**
 * From files to native samples to linear planes: TIFF, PNG and JPEG from strangers, with every
 * limit named. Start reading at {@link org.duskply.engine.frame.FrameSource}. Knows nothing of
 * graphs; no colour is left to the JDK's conversions, and no pixel to its default readers.
 */
@NullMarked
package org.duskply.engine.frame;

import org.jspecify.annotations.NullMarked;
