package org.duskply.engine;

import java.util.Map;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Reach;

/** Looks at the masks of steps as they fall on the canvas: at those that show nothing, or reach too far. */
final class MaskChecks {
  private MaskChecks() {}

  /**
   * Looks at each mask.
   *
   * @param maskOfStep the mask of each step by the step's path
   * @param picture what all steps make
   */
  static void check(Map<String, Node> maskOfStep, Region canvas, Node picture, Found found) {
    Reach reach = new Reach();
    for (Map.Entry<String, Node> e : maskOfStep.entrySet()) {
      String path = e.getKey() + "/mask";
      if (e.getValue().footprint(canvas).empty()) {
        found.notice(path, "This mask is empty on the picture, so the step shows nowhere.");
      }
      if (reach.of(e.getValue()) > Reach.MOST) {
        found.problem(path, tooFar("With this mask", reach.of(e.getValue())));
        return; // all that stands on it reaches as far
      }
    }
    if (reach.of(picture) > Reach.MOST) {
      found.problem("steps", tooFar("Together", reach.of(picture)));
    }
  }

  private static String tooFar(String with, int reach) {
    return with
        + " the soft edges and radii that build on each other reach "
        + reach
        + " pixels far; "
        + Reach.MOST
        + " is the most.";
  }
}
