package org.duskply.engine.deliver;

import java.io.IOException;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;

/**
 * A baseline JPEG. The encoder wants the picture whole, so its 8-bit samples are held until the
 * end: a band is encoded to its codes, appending copies them into place.
 */
final class JpegFile implements Container {
  /** Longest side that the encoder takes. */
  static final int MAX_SIDE = 65_500;

  private final SinkSpec spec;
  private final BandLayout layout;
  private final byte[] profile;
  private byte[] picture = new byte[0];

  JpegFile(SinkSpec spec, BandLayout layout, byte[] profile) {
    this.spec = spec;
    this.layout = layout;
    this.profile = profile.clone();
    if (Math.max(spec.width(), spec.height()) > MAX_SIDE) {
      throw refused("a JPEG is at most " + MAX_SIDE + " pixels wide and high.");
    }
    if (layout.pictureBytes() > Integer.MAX_VALUE - 8) {
      throw refused(
          "a JPEG of " + spec.width() + " × " + spec.height() + " pixels cannot be made.");
    }
    String refusal = JpegSegments.refusal(spec.captions());
    if (refusal != null) {
      throw refused(refusal);
    }
  }

  @Override
  public Encoded encode(int band, CodeRows rows) {
    short[] codes = new short[layout.rowSamples()];
    byte[] bytes = new byte[codes.length * rows.count()];
    for (int at = 0; at < bytes.length; at += codes.length) {
      rows.next(codes);
      SamplePacking.bytes(codes, codes.length, bytes, at);
    }
    return new Encoded(bytes, new int[0], rows.clipped());
  }

  @Override
  public void begin(SafeFile file) {
    picture = new byte[(int) layout.pictureBytes()];
  }

  @Override
  public void append(SafeFile file, int band, Encoded encoded) {
    byte[] bytes = encoded.bytes();
    int at = layout.area(band).top() * layout.rowSamples();
    System.arraycopy(bytes, 0, picture, at, bytes.length);
  }

  @Override
  public void end(SafeFile file, BooleanSupplier stop) {
    try {
      if (!JpegEncoder.write(picture, spec, profile, file, stop)) {
        throw new CancellationException();
      }
    } catch (IOException e) {
      throw new DeliverException(
          spec.target() + " cannot be encoded as JPEG: " + e.getMessage(), e);
    } finally {
      picture = new byte[0];
    }
  }

  @Override
  public long encodeBytes(int rows) {
    return layout.rowBytes() * rows + CodeRows.bytes(layout.width());
  }

  @Override
  public long heldBytes() {
    return layout.pictureBytes()
        + JpegEncoder.heldBytes(layout.width())
        + JpegSegments.bytes(spec.captions(), profile);
  }

  private DeliverException refused(String reason) {
    return new DeliverException(spec.target() + " cannot be written: " + reason);
  }
}
