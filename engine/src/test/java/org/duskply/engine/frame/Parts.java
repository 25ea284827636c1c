package org.duskply.engine.frame;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.duskply.engine.pixel.Region;

/** Parts of a unit that a render may ask for. */
final class Parts {
  private Parts() {}

  /** All of it, its corners, and some between, always the same. */
  static List<Region> of(Region unit, long seed) {
    Random random = new Random(seed);
    List<Region> parts = new ArrayList<>();
    parts.add(unit);
    parts.add(new Region(unit.left(), unit.top(), unit.left() + 1, unit.top() + 1));
    parts.add(new Region(unit.right() - 1, unit.bottom() - 1, unit.right(), unit.bottom()));
    for (int i = 0; i < 4; i++) {
      int left = unit.left() + random.nextInt(unit.width());
      int top = unit.top() + random.nextInt(unit.height());
      int right = left + 1 + random.nextInt(unit.right() - left);
      parts.add(new Region(left, top, right, top + 1 + random.nextInt(unit.bottom() - top)));
    }
    return parts;
  }
}
