package org.duskply.engine.deliver;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/**
 * The rows of a band as integer codes of the file's colour space, one after the other from the top.
 * For one thread; holds one row of scratch.
 */
final class CodeRows {
  private final OutputColour colour;
  private final Rounding rounding;
  private final Planes rows;
  private final float[][] scratch;
  private int y;
  private long clipped;

  CodeRows(OutputColour colour, Rounding rounding, Planes rows) {
    this.colour = colour;
    this.rounding = rounding;
    this.rows = rows;
    this.scratch = new float[BandLayout.CHANNELS][rows.area().width()];
    this.y = rows.area().top();
  }

  /** How many rows in all. */
  int count() {
    return rows.area().height();
  }

  /**
   * The next row.
   *
   * @param codes takes 3·width unsigned codes: R, G, B of a pixel together
   */
  void next(short[] codes) {
    Region area = rows.area();
    int from = rows.at(area.left(), y);
    for (int p = 0; p < scratch.length; p++) {
      System.arraycopy(rows.plane(p), from, scratch[p], 0, area.width());
    }
    float[] round = rounding.row(y++);
    clipped += colour.codes(scratch[0], scratch[1], scratch[2], area.width(), round, codes);
  }

  /** Pixels clipped in the rows so far. */
  long clipped() {
    return clipped;
  }

  /** Bytes that this and a row of codes hold, with room for the headers of such objects. */
  static long bytes(int width) {
    return (long) width * BandLayout.CHANNELS * (Float.BYTES + Short.BYTES) + 1024;
  }
}
