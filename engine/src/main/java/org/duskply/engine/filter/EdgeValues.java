package org.duskply.engine.filter;

import java.util.Arrays;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/** Continues planes beyond a picture's border by the value at its edge. */
public final class EdgeValues {
  private EdgeValues() {}

  /**
   * Writes every sample of {@code planes} that lies outside {@code known} from the nearest one
   * inside.
   *
   * @param known where the planes hold values already; must meet their area
   */
  public static void extend(Planes planes, Region known) {
    Region area = planes.area();
    Region inside = known.meet(area);
    if (inside.empty()) {
      throw new IllegalArgumentException("nothing known in " + area + " of " + known);
    }
    for (int p = 0; p < planes.count(); p++) {
      float[] samples = planes.plane(p);
      for (int y = inside.top(); y < inside.bottom(); y++) {
        int row = planes.at(area.left(), y);
        int from = planes.at(inside.left(), y);
        int to = from + inside.width();
        Arrays.fill(samples, row, from, samples[from]);
        Arrays.fill(samples, to, row + area.width(), samples[to - 1]);
      }
      int first = planes.at(area.left(), inside.top());
      for (int y = area.top(); y < inside.top(); y++) {
        System.arraycopy(samples, first, samples, planes.at(area.left(), y), area.width());
      }
      int last = planes.at(area.left(), inside.bottom() - 1);
      for (int y = inside.bottom(); y < area.bottom(); y++) {
        System.arraycopy(samples, last, samples, planes.at(area.left(), y), area.width());
      }
    }
  }
}
