package org.duskply.recipe;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.text.Mentions;
import org.duskply.recipe.text.Mentions.Mention;
import org.duskply.recipe.text.Nearest;
import org.duskply.recipe.text.Problems;
import org.duskply.recipe.text.Spot;

/** Looks for names that are used and not given, for rings of masks, and for what nothing uses. */
final class NameChecks {
  private final Mentions mentions;
  private final StepNames steps;
  private final Problems problems;
  private final Map<NameList, Set<String>> given = new EnumMap<>(NameList.class);

  NameChecks(Mentions mentions, StepNames steps, Problems problems) {
    this.mentions = mentions;
    this.steps = steps;
    this.problems = problems;
  }

  void check() {
    mentions.used().forEach(this::known);
    rings();
    if (!problems.any()) { // Else what looks idle may be used in a part with a mistake.
      idle(NameList.FRAMES);
      idle(NameList.MASKS);
      idle(NameList.ALTERNATES);
    }
  }

  private void known(Mention use) {
    Set<String> given = given(use.list());
    boolean known = use.list() == NameList.STEPS && steps.path(use.name()).isPresent();
    if (known || given.contains(use.name()) || mentions.lost(use.list())) {
      return;
    }
    String nearest = Nearest.among(given, use.name());
    String help =
        nearest != null
            ? "; did you mean `" + nearest + "`?"
            : given.isEmpty()
                ? "; `" + use.list().key() + "` names none"
                : "; known ones are " + few(given);
    problems.add(
        use.spot(),
        use.path(),
        "there is no " + use.list().noun() + " called `" + use.name() + "`" + help,
        use.name(),
        "a name from " + use.list().key(),
        nearest);
  }

  /** The names that a use may say. */
  private Set<String> given(NameList list) {
    return given.computeIfAbsent(
        list,
        l -> {
          Set<String> names = new LinkedHashSet<>(l.always());
          names.addAll(l == NameList.STEPS ? steps.all().values() : mentions.given(l).keySet());
          return names;
        });
  }

  private static String few(Set<String> names) {
    String list = names.stream().limit(12).collect(Collectors.joining(", "));
    return names.size() > 12 ? list + ", …" : list;
  }

  private void idle(NameList list) {
    Set<String> used =
        mentions.used().stream()
            .filter(m -> m.list() == list)
            .map(Mention::name)
            .collect(Collectors.toSet());
    mentions
        .given(list)
        .forEach(
            (name, at) -> {
              if (!used.contains(name)) {
                problems.notice(
                    at.spot(),
                    at.path(),
                    "nothing uses the " + list.noun() + " `" + name + "`",
                    name,
                    "a use of it");
              }
            });
  }

  /** Follows each mask to the masks that it uses; steps back on the way are rings. */
  private void rings() {
    Map<String, List<Mention>> uses = usesByMask();
    Map<String, Integer> heights = new HashMap<>();
    for (String mask : uses.keySet()) {
      if (!heights.containsKey(mask)) {
        walk(mask, uses, heights);
      }
    }
    heights.forEach((mask, height) -> tooDeep(mask, height));
  }

  /** Depth first without recursion, since a chain may be as long as a recipe. */
  private void walk(String from, Map<String, List<Mention>> uses, Map<String, Integer> heights) {
    Deque<String> trail = new ArrayDeque<>();
    Map<String, Integer> next = new LinkedHashMap<>();
    trail.addLast(from);
    next.put(from, 0);
    while (!trail.isEmpty()) {
      String here = trail.getLast();
      List<Mention> below = uses.getOrDefault(here, List.of());
      int i = next.getOrDefault(here, 0);
      if (i == below.size()) {
        heights.put(here, height(below, heights));
        trail.removeLast();
        next.remove(here);
        continue;
      }
      next.put(here, i + 1);
      Mention use = below.get(i);
      if (next.containsKey(use.name())) {
        ring(use, new ArrayList<>(trail));
      } else if (!heights.containsKey(use.name())) {
        trail.addLast(use.name());
        next.put(use.name(), 0);
      }
    }
  }

  private static int height(List<Mention> below, Map<String, Integer> heights) {
    return 1 + below.stream().mapToInt(m -> heights.getOrDefault(m.name(), 0)).max().orElse(0);
  }

  private void ring(Mention use, List<String> trail) {
    List<String> ring = new ArrayList<>(trail.subList(trail.indexOf(use.name()), trail.size()));
    ring.add(use.name());
    String shown =
        ring.size() > 12
            ? String.join(" → ", ring.subList(0, 11)) + " → … → " + use.name()
            : String.join(" → ", ring);
    problems.add(
        use.spot(),
        use.path(),
        ring.size() == 2
            ? "the mask `" + use.name() + "` uses itself"
            : "these masks use each other in a ring: " + shown,
        shown,
        "masks that do not lead back to themselves");
  }

  private void tooDeep(String mask, int height) {
    // Reported once, at the first mask of a chain that passes the limit.
    if (height == Limits.MASK_DEPTH + 1) {
      Mention at = mentions.given(NameList.MASKS).get(mask);
      Spot spot = at == null ? Spot.START : at.spot();
      problems.add(
          spot,
          "masks/" + mask,
          "more than " + Limits.MASK_DEPTH + " masks use each other in a chain below this one",
          "a chain of " + height,
          "at most " + Limits.MASK_DEPTH);
    }
  }

  private Map<String, List<Mention>> usesByMask() {
    Map<String, List<Mention>> uses = new LinkedHashMap<>();
    for (Mention use : mentions.used()) {
      String[] path = use.path().split("/", 3);
      if (use.list() == NameList.MASKS && path[0].equals(NameList.MASKS.key())) {
        uses.computeIfAbsent(path[1], mask -> new ArrayList<>()).add(use);
      }
    }
    return uses;
  }
}
