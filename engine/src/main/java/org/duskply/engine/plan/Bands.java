package org.duskply.engine.plan;

import org.duskply.engine.pixel.Region;

/**
 * How rows are counted in bands: band {@code k} holds rows {@code k·height} up to {@code (k +
 * 1)·height}, above the canvas too.
 *
 * @param height rows of a band, at least 1
 */
public record Bands(int height) {
  /** The band of a row. */
  public int of(int row) {
    return Math.floorDiv(row, height);
  }

  /** First band that {@code region} touches; it is not empty. */
  public int first(Region region) {
    return of(region.top());
  }

  /** Last band that {@code region} touches; it is not empty. */
  public int last(Region region) {
    return of(region.bottom() - 1);
  }

  /** The rows of {@code region} that lie in {@code band}. */
  public Region cut(Region region, int band) {
    return region.rows(band * height, (band + 1) * height);
  }
}
