package org.duskply.recipe;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Rule;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Values;
import org.duskply.recipe.step.Step;

/**
 * The same picture for another purpose: steps left out, steps brought in, keys of steps changed.
 * Steps go by their names in the recipe as it stands.
 *
 * @param skip steps left out
 * @param show steps brought in, whose own {@code skip} is true
 * @param set new values for keys of steps, by step and key, as text, number, truth value, list or
 *     map, just as the step itself would write them
 * @param extensions the user's own {@code x-} keys
 */
public record Alternate(
    List<String> skip,
    List<String> show,
    Map<String, Map<String, Object>> set,
    Map<String, Object> extensions) {
  /** The recipe as it stands, among the alternates of a deliverable. */
  public static final String MAIN = NameList.MAIN;

  private static final Map<String, String> FIXED =
      Map.of(
          "id", "delete it",
          "group", "change the group's steps one by one, as in pair/#1: { opacity: 0.5 }");

  /** How a recipe writes it. */
  public static final Shape<Alternate> SHAPE =
      Shape.mapping(
              Alternate.class,
              "alternate",
              "The same picture for another purpose.",
              steps("skip").says("Steps that are left out.").example("[ember]"),
              steps("show")
                  .says("Steps that are brought in, though they say skip: true.")
                  .example("[lamps-off]"),
              Field.of("set", new Kind.Changes(NameList.STEPS, () -> Step.SHAPE, FIXED))
                  .byDefault(Map.of())
                  .says("Other values for keys of steps, written as in the step itself.")
                  .example("{ water: { opacity: 0.5 } }"),
              Field.extensions())
          .rules(new Rule(List.of("skip", "show"), Alternate::contrary))
          .example("no-fire: { skip: [ember], set: { water: { opacity: 0.5 } } }");

  /** Copies lists and maps. */
  public Alternate {
    skip = List.copyOf(skip);
    show = List.copyOf(show);
    Map<String, Map<String, Object>> copy = new LinkedHashMap<>();
    set.forEach((step, keys) -> copy.put(step, Collections.unmodifiableMap(keys)));
    set = Collections.unmodifiableMap(copy);
    extensions = Collections.unmodifiableMap(new LinkedHashMap<>(extensions));
  }

  private static Field steps(String component) {
    Kind step = new Kind.Mention(NameList.STEPS);
    return Field.of(component, new Kind.Items(step, "step", 0, Limits.STEPS)).byDefault(List.of());
  }

  private static List<Fault> contrary(Values values) {
    List<Fault> faults = new ArrayList<>();
    Set<Object> skip = new HashSet<>(values.get("skip", List.class));
    List<?> show = values.get("show", List.class);
    for (int i = 0; i < show.size(); i++) {
      Object step = show.get(i);
      if (skip.contains(step)) {
        String sentence = "`" + step + "` stands under `skip` and under `show`; keep one";
        faults.add(new Fault("show/#" + (i + 1), sentence, "" + step, "one of the two"));
      }
    }
    return faults;
  }
}
