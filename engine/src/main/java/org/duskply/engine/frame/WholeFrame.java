package org.duskply.engine.frame;

import java.util.List;
import java.util.function.ToLongFunction;
import org.duskply.engine.pixel.Region;

/**
 * A frame that can only be decoded from its start, or that must be turned upright. The first unit
 * that is asked for decodes the picture; the samples that its reader is for are then held until the
 * reader is closed, and units are cut from them in any order.
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
  private final ToLongFunction<Region> decoderBytes;
  private final WholeDecoder decoder;
  private final int unitRows;

  /**
   * @param info of the upright picture
   * @param turn from the stored to the upright picture
   * @param decoderBytes most bytes that the decoder holds beside the samples, for a part of the
   *     stored picture
   */
  WholeFrame(
      FrameFile file,
      FrameInfo info,
      Turn turn,
      String reason,
      ToLongFunction<Region> decoderBytes,
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

  @Override
  public Region returned(int index, Region part) {
    return unit(index).meet(part);
  }

  @Override
  public long workingBytes() {
    return workingBytes(whole());
  }

  /** What the decoder needs while the first unit is read. */
  @Override
  public long workingBytes(Region part) {
    return decoderBytes.applyAsLong(turn.only(part).stored());
  }

  @Override
  public long cursorBytes() {
    return cursorBytes(whole());
  }

  /** The samples of the part. */
  @Override
  public long cursorBytes(Region part) {
    return part.count() * info.channels() * info.kind().bytes();
  }

  @Override
  public FrameReader reader() {
    return reader(whole());
  }

  @Override
  public FrameReader reader(Region part) {
    return new WholeReader(this, file.again(), part);
  }

  private Region whole() {
    return Region.ofSize(info.width(), info.height());
  }

  /** Decodes a part of the picture into one array, upright. */
  Object decode(FrameFile in, Region part, List<String> notices) {
    Object held = room(part);
    Turn only = turn.only(part);
    decoder.decode(in, only.stored(), rows -> only.place(rows, held), notices);
    return held;
  }

  /**
   * The samples of a region, cut from those that are held.
   *
   * @param part the pixels that are held
   */
  Samples cut(Object held, Region part, Region area) {
    Object cut = room(area);
    int count = area.width() * info.channels();
    for (int y = area.top(); y < area.bottom(); y++) {
      int from = (y - part.top()) * part.width() + area.left() - part.left();
      System.arraycopy(held, from * info.channels(), cut, (y - area.top()) * count, count);
    }
    return samples(area, cut);
  }

  private Object room(Region area) {
    int samples = Math.toIntExact(area.count() * info.channels());
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
