package org.duskply.engine;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.render.RegionEvaluator;
import org.jspecify.annotations.Nullable;

/** How much of the finished picture masks show, measured by making them; each once. */
final class MaskAreas {
  private static final int ROWS = 64;

  private final PlannedComposite composite;
  private final Map<Node, Double> areaOfMask = new IdentityHashMap<>();
  private final Map<Node, Boolean> readsPictures = new IdentityHashMap<>();

  MaskAreas(PlannedComposite composite) {
    this.composite = composite;
  }

  /**
   * Share of the picture, weighted by the mask; NaN where pictures would have to be decoded.
   *
   * @param mask absent: everywhere
   */
  double of(@Nullable Node mask) {
    return mask == null ? 1 : areaOfMask.computeIfAbsent(mask, this::measure);
  }

  /** Whether a mask, or one that it is made of, is read off a picture. */
  private boolean readsPictures(Node mask) {
    Boolean known = readsPictures.get(mask);
    if (known == null) {
      known = mask.planes() > 1 || mask.inputs().stream().anyMatch(this::readsPictures);
      readsPictures.put(mask, known);
    }
    return known;
  }

  private double measure(Node mask) {
    if (readsPictures(mask)) {
      return Double.NaN;
    }
    Region shown = composite.shown();
    double sum = 0;
    Plan plan = Plan.of(List.of(mask), composite.engine().settings());
    try (RegionEvaluator evaluator = new RegionEvaluator(plan, 0)) {
      for (int y = shown.top(); y < shown.bottom(); y += ROWS) {
        Region part = mask.footprint(shown.rows(y, y + ROWS)).meet(shown);
        if (!part.empty()) {
          Planes planes = evaluator.compute(mask, part, Stop.NEVER);
          for (float v : planes.plane(0)) {
            sum += v;
          }
        }
      }
    }
    return sum / shown.count();
  }
}
