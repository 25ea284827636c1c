package org.duskply.engine.testing;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.render.BandSink;

/** A sink that keeps the picture, and checks that its bands come once each and in order. */
public final class Collected implements BandSink {
  private final Planes picture;
  private int next;

  public Collected(Region canvas) {
    this.picture = new Planes(canvas, 3);
  }

  /** What has come so far. */
  public Planes picture() {
    return picture;
  }

  @Override
  public Runnable encode(int band, Planes rows) {
    return () -> {
      if (band != next++) {
        throw new IllegalStateException("Band " + band + " came out of order");
      }
      picture.copyFrom(rows);
    };
  }

  @Override
  public long encodeBytes(Region band) {
    return Planes.bytes(band, 3);
  }

  @Override
  public long heldBytes() {
    return 777;
  }
}
