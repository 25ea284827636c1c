package org.duskply.engine.frame;

/**
 * Looks at the JPEG pieces of a TIFF file (Technical Note 2) before they are decoded: one that says
 * it is larger than its strip or tile would be decoded at its own size, whatever little it holds.
 */
final class TiffJpegPieces {
  /**
   * Pixels by which a piece may be larger: a block of samples at the coarsest sampling of chroma.
   */
  private static final int ROUNDED = 32;

  private TiffJpegPieces() {}

  /** Refuses a file with a piece that is larger than its place. */
  static void check(ByteSource file, TiffBlocks blocks) {
    for (int b = 0; b < blocks.offsets().length; b++) {
      JpegSegments piece =
          JpegSegments.read(new Piece(file, blocks.offsets()[b], blocks.lengths()[b]));
      if (piece.width() > blocks.width() + ROUNDED || piece.height() > blocks.height() + ROUNDED) {
        throw file.fail(
            "is damaged: its rows from "
                + blocks.top(b)
                + " are in a JPEG of "
                + piece.width()
                + " × "
                + piece.height()
                + " pixels, larger than its place");
      }
    }
  }

  /** The stored bytes of one block. */
  private record Piece(ByteSource file, long from, long size) implements ByteSource {
    @Override
    public void read(long at, byte[] into, int to, int count) {
      file.read(from + at, into, to, count);
    }

    @Override
    public FrameException fail(String predicate) {
      return file.fail(predicate);
    }

    @Override
    public FrameException fail(String predicate, Throwable cause) {
      return file.fail(predicate, cause);
    }
  }
}
