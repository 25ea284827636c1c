package org.duskply.engine.frame;

import org.duskply.engine.pixel.Region;

/**
 * Native samples of some rows of a frame, chunky (all channels of a pixel together), row by row
 * without gaps. Exactly one of the three arrays is there, as {@code kind} says; integers are
 * unsigned.
 */
public final class Samples {
  /** How samples are held. */
  public enum Kind {
    BYTES(1),
    SHORTS(2),
    FLOATS(4);

    private final int bytes;

    Kind(int bytes) {
      this.bytes = bytes;
    }

    /** Bytes a sample. */
    public int bytes() {
      return bytes;
    }
  }

  private final Region area;
  private final int channels;
  private final Object data;

  private Samples(Region area, int channels, Object data, int length) {
    if (length != area.count() * channels) {
      throw new IllegalArgumentException(length + " samples for " + area + " × " + channels);
    }
    this.area = area;
    this.channels = channels;
    this.data = data;
  }

  /** Unsigned 8-bit samples. */
  public static Samples of(Region area, int channels, byte[] data) {
    return new Samples(area, channels, data, data.length);
  }

  /** Unsigned 16-bit samples. */
  public static Samples of(Region area, int channels, short[] data) {
    return new Samples(area, channels, data, data.length);
  }

  /** Float samples. */
  public static Samples of(Region area, int channels, float[] data) {
    return new Samples(area, channels, data, data.length);
  }

  /** The pixels held, in the upright frame's coordinates. */
  public Region area() {
    return area;
  }

  /** Samples a pixel. */
  public int channels() {
    return channels;
  }

  /** How samples are held. */
  public Kind kind() {
    return data instanceof byte[]
        ? Kind.BYTES
        : data instanceof short[] ? Kind.SHORTS : Kind.FLOATS;
  }

  /** Bytes that the samples take. */
  public long heldBytes() {
    return area.count() * channels * kind().bytes();
  }

  /** The live array of a {@link Kind#BYTES} block. */
  public byte[] bytes() {
    return (byte[]) data;
  }

  /** The live array of a {@link Kind#SHORTS} block. */
  public short[] shorts() {
    return (short[]) data;
  }

  /** The live array of a {@link Kind#FLOATS} block. */
  public float[] floats() {
    return (float[]) data;
  }

  /** The sample at an index, whatever its kind; for rare and slow ways alone. */
  double value(int index) {
    return switch (kind()) {
      case BYTES -> bytes()[index] & 0xff;
      case SHORTS -> shorts()[index] & 0xffff;
      case FLOATS -> floats()[index];
    };
  }

  /** Index of the first sample of the pixel in column {@code x} of row {@code y}. */
  public int at(int x, int y) {
    return ((y - area.top()) * area.width() + (x - area.left())) * channels;
  }
}
