package org.duskply.engine.testing;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.render.BandSink;
import org.duskply.engine.render.EncodedBand;

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

  /** The rows as they are. */
  private record Rows(Planes planes) implements EncodedBand {
    @Override
    public long heldBytes() {
      return Planes.bytes(planes.area(), planes.count());
    }
  }

  @Override
  public EncodedBand encode(int band, Planes rows) {
    return new Rows(rows);
  }

  @Override
  public void append(int band, EncodedBand encoded) {
    if (band != next++) {
      throw new IllegalStateException("Band " + band + " came out of order");
    }
    picture.copyFrom(((Rows) encoded).planes());
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("collected");
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
