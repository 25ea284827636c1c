package org.duskply.engine.mask;

import org.duskply.engine.filter.EdgeValues;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Node;

/**
 * What a neighbourhood reads of a mask beyond the canvas: the mask itself where it is {@link
 * Boundless}, else its values at the canvas's edge, continued. A mask that is not boundless is
 * never asked for anything outside the canvas.
 *
 * @param canvas all pixels of the picture
 * @param boundless whether the mask goes on by itself
 */
record Border(Region canvas, boolean boundless) {
  /** The border of a mask. */
  static Border of(Node mask, Region canvas) {
    return new Border(canvas, Boundless.is(mask));
  }

  /** What must be asked of the mask to know it in {@code needed}. */
  Region reads(Region needed) {
    return boundless ? needed : needed.meet(canvas);
  }

  /**
   * The mask in all of {@code needed}.
   *
   * @param read what it has in {@link #reads}
   */
  Planes continued(Planes read, Region needed) {
    if (boundless || canvas.contains(needed)) {
      return read;
    }
    Planes whole = new Planes(needed, 1);
    whole.copyFrom(read);
    EdgeValues.extend(whole, canvas);
    return whole;
  }

  /** Bytes that {@link #continued} takes. */
  long scratchBytes(Region needed) {
    return boundless || canvas.contains(needed) ? 0 : Planes.bytes(needed, 1);
  }
}
