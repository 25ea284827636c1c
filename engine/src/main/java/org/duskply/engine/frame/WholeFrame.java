package org.duskply.engine.frame;

import java.util.List;
import org.duskply.engine.pixel.Region;

/**
 * A frame that can only be decoded whole, or that must be turned upright. The first unit that is
 * asked for decodes the picture; its samples are then held until the reader is closed, and units
 * are cut from them in any order.
 *
 * <p>It calls itself FORWARD because its reader holds what it decodes: the samples count as cursor
 * bytes, and one reader serves one line of work. Its reader may nevertheless be called from several
 * threads; all but one wait while the picture is decoded.
 */
final class WholeFrame implements FrameSource {
  private final FrameFile file;
  private final FrameInfo info;
  private final Turn turn;
  private final String reason;
  private final long decoderBytes;
  private final WholeDecoder decoder;
  private final int unitRows;

  /**
   * @param info of the upright picture
   * @param turn from the stored to the upright picture
   * @param decoderBytes most bytes that the decoder holds beside the samples
   */
  WholeFrame(
      FrameFile file,
      FrameInfo info,
      Turn turn,
      String reason,
      long decoderBytes,
      WholeDecoder decoder) {
    FrameLimits.checkWhole(file, info.width(), info.height(), info.channels());
    this.file = file;
    this.info = info;
    this.turn = turn;
    this.reason = reason;
    this.decoderBytes = decoderBytes;
    this.decoder = decoder;
    this.unitRows =
        FrameLimits.unitRows((long) info.width() * info.channels() * info.kind().bytes());
  }

  @Override
  public FrameInfo info() {
    return info;
  }

  @Override
  public Access access() {
    return Access.FORWARD;
  }

  @Override
  public String reason() {
    return reason;
  }

  @Override
  public int units() {
    return (info.height() - 1) / unitRows + 1;
  }

  @Override
  public Region unit(int index) {
    if (index < 0 || index >= units()) {
      throw new IndexOutOfBoundsException("unit " + index + " of " + units());
    }
    int top = index * unitRows;
    return new Region(0, top, info.width(), Math.min(info.height(), top + unitRows));
  }

  /** What the decoder needs while the first unit is read. */
  @Override
  public long workingBytes() {
    return decoderBytes;
  }

  /** The samples of the whole picture. */
  @Override
  public long cursorBytes() {
    return (long) samples() * info.kind().bytes();
  }

  @Override
  public FrameReader reader() {
    return new WholeReader(this, file.again());
  }

  private int samples() {
    return info.width() * info.height() * info.channels();
  }

  /** Decodes the picture into one array, upright. */
  Object decode(FrameFile in, List<String> notices) {
    Object whole = room(samples());
    decoder.decode(in, rows -> turn.place(rows, whole), notices);
    return whole;
  }

  /** The samples of a unit, cut from the whole picture. */
  Samples cut(Object whole, Region area) {
    int from = area.top() * info.width() * info.channels();
    int count = Math.toIntExact(area.count()) * info.channels();
    Object part = room(count);
    System.arraycopy(whole, from, part, 0, count);
    return samples(area, part);
  }

  private Object room(int samples) {
    return switch (info.kind()) {
      case BYTES -> new byte[samples];
      case SHORTS -> new short[samples];
      case FLOATS -> new float[samples];
    };
  }

  private Samples samples(Region area, Object part) {
    return switch (info.kind()) {
      case BYTES -> Samples.of(area, info.channels(), (byte[]) part);
      case SHORTS -> Samples.of(area, info.channels(), (short[]) part);
      case FLOATS -> Samples.of(area, info.channels(), (float[]) part);
    };
  }
}
