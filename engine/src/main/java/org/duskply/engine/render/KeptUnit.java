package org.duskply.engine.render;

import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Region;

/**
 * What was decoded of a unit of a frame.
 *
 * @param samples as they stand in the file
 */
record KeptUnit(Samples samples) implements Kept {
  @Override
  public Worth worth() {
    return Worth.SAMPLES;
  }

  @Override
  public Region area() {
    return samples.area();
  }

  @Override
  public long heldBytes() {
    return samples.heldBytes();
  }
}
