package org.duskply.engine;

import java.util.Collection;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Reach;
import org.duskply.recipe.Alternate;

/**
 * Looks at the masks of steps as they fall on the canvas: at those that show nothing, and at those
 * that look too far.
 */
final class MaskChecks {
  private final Region canvas;
  private final Found found;
  private final Reach reach = new Reach();
  private final Set<String> told = new HashSet<>();

  private MaskChecks(Region canvas, Found found) {
    this.canvas = canvas;
    this.found = found;
  }

  /** Looks at each mask of each version; what is the same in several is told once. */
  static void check(Collection<Version> versions, Region canvas, Found found) {
    MaskChecks checks = new MaskChecks(canvas, found);
    versions.forEach(checks::check);
  }

  private void check(Version version) {
    boolean main = version.alternate().equals(Alternate.MAIN);
    String where = main ? "This mask" : "In the alternate " + version.alternate() + " this mask";
    for (Map.Entry<String, Node> e : version.maskOfStep().entrySet()) {
      String path = e.getKey() + "/mask";
      if (e.getValue().footprint(canvas).empty() && told.add(path)) {
        found.notice(path, where + " is empty on the picture, so the step shows nowhere.");
      }
      if (reach.of(e.getValue()) > Reach.MOST) {
        tooFar(path, "With this mask", reach.of(e.getValue()));
        return; // all that stands on it reaches as far
      }
    }
    if (reach.of(version.picture()) > Reach.MOST) {
      tooFar("steps", "Together", reach.of(version.picture()));
    }
  }

  private void tooFar(String path, String with, int far) {
    if (told.add("far " + path)) {
      found.problem(
          path,
          with
              + " the soft edges and radii that build on each other reach "
              + far
              + " pixels far; "
              + Reach.MOST
              + " is the most.");
    }
  }
}
