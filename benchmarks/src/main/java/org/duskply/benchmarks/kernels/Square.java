package org.duskply.benchmarks.kernels;

import org.duskply.engine.pixel.Region;

/** The picture that work beyond single pixels is done on: a megapixel. */
final class Square {
  static final int SIDE = 1024;
  static final int PIXELS = SIDE * SIDE;
  static final Region AREA = Region.ofSize(SIDE, SIDE);

  private Square() {}
}
