package org.duskply.engine;

import java.lang.ref.SoftReference;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import net.imglib2.RandomAccessibleInterval;
import net.imglib2.img.basictypeaccess.array.FloatArray;
import net.imglib2.img.cell.Cell;
import net.imglib2.img.cell.CellGrid;
import net.imglib2.img.cell.LazyCellImg;
import net.imglib2.type.numeric.real.FloatType;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.render.RegionEvaluator;

/**
 * A picture as an ImgLib2 image of square cells, each computed when it is first read and kept while
 * memory allows.
 */
final class LazyPicture {
  private static final int SIDE = 256;

  private final RegionEvaluator evaluator;
  private final Node picture;
  private final CellGrid grid;
  private final Map<Long, SoftReference<Cell<FloatArray>>> cells = new ConcurrentHashMap<>();

  private LazyPicture(RegionEvaluator evaluator, Node picture, CellGrid grid) {
    this.evaluator = evaluator;
    this.picture = picture;
    this.grid = grid;
  }

  static RandomAccessibleInterval<FloatType> of(
      RegionEvaluator evaluator, Node picture, int width, int height) {
    CellGrid grid = new CellGrid(new long[] {width, height, 3}, new int[] {SIDE, SIDE, 3});
    LazyPicture lazy = new LazyPicture(evaluator, picture, grid);
    return new LazyCellImg<>(grid, new FloatType(), lazy::cell);
  }

  private Cell<FloatArray> cell(long index) {
    SoftReference<Cell<FloatArray>> known = cells.get(index);
    Cell<FloatArray> cell = known == null ? null : known.get();
    if (cell == null) {
      cell = compute(index);
      cells.put(index, new SoftReference<>(cell));
    }
    return cell;
  }

  private Cell<FloatArray> compute(long index) {
    long[] min = new long[3];
    int[] size = new int[3];
    grid.getCellDimensions(index, min, size);
    int left = (int) min[0];
    int top = (int) min[1];
    Region region = new Region(left, top, left + size[0], top + size[1]);
    Planes planes = evaluator.compute(picture, region, Stop.NEVER);
    int count = (int) region.count();
    float[] all = new float[3 * count];
    for (int p = 0; p < 3; p++) {
      System.arraycopy(planes.plane(p), 0, all, p * count, count);
    }
    return new Cell<>(size, min, new FloatArray(all));
  }
}
