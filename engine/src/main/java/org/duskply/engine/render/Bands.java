package org.duskply.engine.render;

import org.duskply.engine.pixel.Region;

/**
 * How rows are counted in bands: band {@code k} holds rows {@code k·height} up to {@code (k +
 * 1)·height}, above the canvas too.
 */
record Bands(int height) {
  /** The band of a row. */
  int of(int row) {
    return Math.floorDiv(row, height);
  }

  /** First band that {@code region} touches; it is not empty. */
  int first(Region region) {
    return of(region.top());
  }

  /** Last band that {@code region} touches; it is not empty. */
  int last(Region region) {
    return of(region.bottom() - 1);
  }

  /** The rows of {@code region} that lie in {@code band}. */
  Region cut(Region region, int band) {
    return region.rows(band * height, (band + 1) * height);
  }
}
