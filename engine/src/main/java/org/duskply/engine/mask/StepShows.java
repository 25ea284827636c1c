package org.duskply.engine.mask;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.duskply.engine.plan.Node;
import org.jspecify.annotations.Nullable;

/**
 * Where each step that is done shows, as a mask: a plain step its mask times its opacity; a group
 * the greatest of its members, times its own mask and opacity. The coverage of frames does not
 * enter. A step that is left out shows nowhere.
 */
public final class StepShows {
  private final Map<String, Node> byPath = new HashMap<>();

  /**
   * Notes a step that is no group.
   *
   * @param path {@code steps/#4/group/#2}
   * @param mask absent: everywhere
   */
  public void step(String path, @Nullable Node mask, double opacity) {
    byPath.put(path, weighted(mask == null ? new EverywhereNode() : mask, opacity));
  }

  /**
   * Notes a group, after its members.
   *
   * @param members how many steps are in it, those that are left out too
   */
  public void group(String path, int members, @Nullable Node mask, double opacity) {
    List<Node> shown = new ArrayList<>();
    for (int i = 1; i <= members; i++) {
      Node member = byPath.get(path + "/group/#" + i);
      if (member != null) {
        shown.add(member);
      }
    }
    if (!shown.isEmpty()) {
      Node greatest = CombinedNode.anyOf(shown);
      byPath.put(
          path, weighted(mask == null ? greatest : CombinedNode.within(greatest, mask), opacity));
    }
  }

  /** Where any of some steps shows. */
  Node anyOf(List<String> paths) {
    List<Node> shown = paths.stream().filter(byPath::containsKey).map(byPath::get).toList();
    return shown.isEmpty() ? new NowhereNode() : CombinedNode.anyOf(shown);
  }

  private static Node weighted(Node mask, double opacity) {
    return opacity == 1 ? mask : CombinedNode.strength(mask, (float) opacity);
  }
}
