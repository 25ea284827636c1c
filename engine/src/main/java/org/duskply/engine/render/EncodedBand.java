package org.duskply.engine.render;

import org.duskply.engine.pixel.Region;

/** A band of an output as a {@link BandSink} has encoded it: always the whole band. */
public non-sealed interface EncodedBand extends Kept {
  @Override
  default Worth worth() {
    return Worth.ENCODED;
  }

  @Override
  default Region area() {
    return Region.EVERYWHERE;
  }
}
