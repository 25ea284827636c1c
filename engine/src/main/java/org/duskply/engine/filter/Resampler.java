package org.duskply.engine.filter;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/**
 * A picture in another size: Lanczos-3 down the columns and then along the rows, weights as {@link
 * LanczosTable} prepares them, on linear planes. Pixel centres map by u = (x + ½)·scale − ½; beyond
 * the border the picture continues by its edge value.
 *
 * <p>Each pass makes a sample as
 *
 * <pre>y = c + Σ wₖ·(xₖ − c),   held to [lo − (hi − lo)/10, hi + (hi − lo)/10]</pre>
 *
 * where c is the sample nearest to the place looked at, and lo and hi are the least and the
 * greatest under the kernel's main lobe (|k − u| &lt; 1, or the scale where the picture shrinks)
 * along that line: so a bright lamp leaves no dark ring. An even area keeps its bits, and so does
 * everything in a direction whose size stays the same.
 *
 * <p>Values are functions of absolute coordinates, the same in any output rectangle. Sums are in
 * float in order of place; the error is some 1e-6 of the range of the samples. Immutable; any
 * number of threads may apply it.
 */
public final class Resampler {
  // Columns of the input, and rows of the output, worked through at a time.
  private static final int COLUMNS = 512;
  private static final int ROWS = 64;

  private final Region from;
  private final Region to;
  private final LanczosTable across;
  private final LanczosTable down;

  private Resampler(int fromWidth, int fromHeight, int toWidth, int toHeight) {
    from = Region.ofSize(fromWidth, fromHeight);
    to = Region.ofSize(toWidth, toHeight);
    across = LanczosTable.of(fromWidth, toWidth);
    down = LanczosTable.of(fromHeight, toHeight);
  }

  /** Makes a picture of {@code toWidth × toHeight} from one of another size; each at least 1. */
  public static Resampler of(int fromWidth, int fromHeight, int toWidth, int toHeight) {
    if (fromWidth < 1 || fromHeight < 1 || toWidth < 1 || toHeight < 1) {
      throw new IllegalArgumentException(
          fromWidth + "×" + fromHeight + " to " + toWidth + "×" + toHeight);
    }
    return new Resampler(fromWidth, fromHeight, toWidth, toHeight);
  }

  /** All pixels that can be asked for. */
  public Region output() {
    return to;
  }

  /** The input, within its picture, that {@code out} is made from. */
  public Region needs(Region out) {
    Region asked = out.meet(to);
    if (asked.empty()) {
      return Region.EMPTY;
    }
    return new Region(
        across.begin(asked.left(), asked.right()),
        down.begin(asked.top(), asked.bottom()),
        across.end(asked.left(), asked.right()),
        down.end(asked.top(), asked.bottom()));
  }

  /** Bytes that {@link #apply} takes beside its input and its result. */
  public long scratchBytes(Region out) {
    Region asked = out.meet(to);
    if (asked.empty()) {
      return 0;
    }
    int height = Math.min(ROWS, asked.height());
    Region needed = needs(asked);
    int lines = down.most(asked.top(), asked.bottom(), ROWS);
    return Lines.bytes(needed.width(), height)
        + Lines.bytes(lines, COLUMNS)
        + Lines.bytes(height, COLUMNS)
        + Lines.bytes(asked.width(), height)
        + Lines.bytes(3, COLUMNS);
  }

  /** As {@link #apply(Planes, int, Planes, int)}, for all planes of {@code out}. */
  public void apply(Planes in, Planes out) {
    for (int p = 0; p < out.count(); p++) {
      apply(in, p, out, p);
    }
  }

  /**
   * Fills plane {@code outPlane} of {@code out}, all of it.
   *
   * @param in must hold what {@link #needs} says
   * @param plane which plane of it
   * @param out must lie within {@link #output}
   */
  public void apply(Planes in, int plane, Planes out, int outPlane) {
    Region area = out.area();
    if (!to.contains(area) || !in.area().contains(needs(area))) {
      throw new IllegalArgumentException(in.area() + " to " + area + " of " + from + " to " + to);
    }
    for (int y = area.top(); y < area.bottom(); y += ROWS) {
      rows(in, plane, out, outPlane, area.rows(y, Math.min(area.bottom(), y + ROWS)));
    }
  }

  private void rows(Planes in, int plane, Planes out, int outPlane, Region part) {
    Region needed = needs(part);
    ResamplePass pass = new ResamplePass(Math.max(COLUMNS, ROWS));
    int height = part.height();
    float[][] columns = Lines.of(needed.width(), height);
    float[][] rows = Lines.of(needed.height(), COLUMNS);
    float[][] madeRows = Lines.of(height, COLUMNS);
    for (int x = needed.left(); x < needed.right(); x += COLUMNS) {
      Region chunk =
          new Region(x, needed.top(), Math.min(x + COLUMNS, needed.right()), needed.bottom());
      Lines.read(in, plane, chunk, rows);
      for (int y = 0; y < height; y++) {
        pass.run(down, part.top() + y, rows, needed.top(), madeRows[y], chunk.width());
      }
      Lines.turn(madeRows, height, columns, x - needed.left(), chunk.width());
    }
    float[][] madeColumns = Lines.of(part.width(), height);
    for (int x = 0; x < part.width(); x++) {
      pass.run(across, part.left() + x, columns, needed.left(), madeColumns[x], height);
    }
    Lines.writeColumns(madeColumns, out, outPlane, part);
  }
}
