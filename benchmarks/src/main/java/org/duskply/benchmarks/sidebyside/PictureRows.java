package org.duskply.benchmarks.sidebyside;

import java.nio.file.Path;
import org.duskply.engine.frame.FrameException;
import org.duskply.engine.frame.FrameReader;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.FrameSources;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Encoded;
import org.jspecify.annotations.Nullable;

/** A file of 16-bit sRGB, read row by row from the top down, by the engine's own readers. */
final class PictureRows implements AutoCloseable {
  private static final int CODES = 65536;
  private static final float[] LINEAR = linear();

  private final FrameSource source;
  private final FrameReader reader;
  private int next;
  private @Nullable Samples samples;

  private PictureRows(FrameSource source) {
    this.source = source;
    this.reader = source.reader();
  }

  /**
   * Opens a file.
   *
   * @throws Refusal if it is no such picture
   */
  static PictureRows open(Path file) {
    FrameSource source = source(file);
    if (source.info().channels() != 3 || source.info().kind() != Samples.Kind.SHORTS) {
      throw new Refusal(file + " does not hold 16-bit red, green and blue.");
    }
    return new PictureRows(source);
  }

  private static FrameSource source(Path file) {
    try {
      return FrameSources.open(file);
    } catch (FrameException e) {
      throw new Refusal(file + " cannot be read as a picture.", e);
    }
  }

  /** The linear value of a 16-bit code. */
  static float linear(short code) {
    return LINEAR[code & 0xFFFF];
  }

  int width() {
    return source.info().width();
  }

  int height() {
    return source.info().height();
  }

  /**
   * The codes of row {@code y}, red, green and blue in turn; rows are asked for in rising order.
   */
  short[] row(int y) {
    Samples held = samples;
    while (held == null || y >= held.area().bottom()) {
      held = reader.read(next++);
    }
    samples = held;
    short[] row = new short[3 * width()];
    System.arraycopy(held.shorts(), held.at(0, y), row, 0, row.length);
    return row;
  }

  @Override
  public void close() {
    reader.close();
  }

  private static float[] linear() {
    float[] linear = new float[CODES];
    for (int i = 0; i < CODES; i++) {
      linear[i] = (float) Encoded.decodeExactly(i / (CODES - 1.0));
    }
    return linear;
  }
}
