/**
 * Finished pictures into files: names, sizes, target colours, captions, encoders, safe writing.
 * Start reading at {@link org.duskply.engine.deliver.Sink}. Bands come in as linear planes; where
 * they come from is not known here.
 */
@NullMarked
package org.duskply.engine.deliver;

import org.jspecify.annotations.NullMarked;
