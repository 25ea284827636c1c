package org.duskply.engine.render;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.pixel.Runs;
import org.jspecify.annotations.Nullable;

/**
 * A finished band of a stage.
 *
 * @param planes its pixels
 * @param runs those of a mask; absent for a picture
 * @param worth what it is worth
 */
record KeptBand(Planes planes, @Nullable Runs runs, Worth worth) implements Kept {
  @Override
  public Region area() {
    return planes.area();
  }

  @Override
  public long heldBytes() {
    return Planes.bytes(planes.area(), planes.count()) + (runs == null ? 0 : runs.heldBytes());
  }
}
