package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.recipe.Alternate;
import org.duskply.recipe.Alternates;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.StepNames;
import org.duskply.recipe.step.Step;

/** What an alternate does otherwise than the recipe as it stands, in sentences. */
final class AlternateWords {
  private AlternateWords() {}

  /**
   * The alternate.
   *
   * @param recipe as it stands
   * @param name of one of its alternates
   * @param masks the words of its masks
   */
  static String sentences(Recipe recipe, String name, ToldMasks masks) {
    Alternate alternate = recipe.alternates().get(name);
    if (alternate == null) {
      throw new IllegalArgumentException("there is no alternate called " + name);
    }
    List<String> sentences = new ArrayList<>();
    add(alternate.skip(), "left out", sentences);
    add(alternate.show(), "brought in", sentences);
    StepNames names = StepNames.of(recipe);
    Recipe changed = Alternates.apply(recipe, name);
    alternate
        .set()
        .forEach(
            (step, keys) ->
                names
                    .path(step)
                    .ifPresent(
                        path ->
                            sentences.add(
                                changed(
                                    step,
                                    List.copyOf(keys.keySet()),
                                    path,
                                    names,
                                    changed,
                                    masks))));
    return sentences.isEmpty() ? "Nothing is done otherwise." : String.join(" ", sentences);
  }

  private static void add(List<String> steps, String done, List<String> sentences) {
    if (!steps.isEmpty()) {
      String verb = steps.size() == 1 ? " is " : " are ";
      sentences.add(ListWords.capital(ListWords.the("step", steps)) + verb + done + ".");
    }
  }

  private static String changed(
      String name,
      List<String> keys,
      String path,
      StepNames names,
      Recipe changed,
      ToldMasks masks) {
    Step step = StepNames.step(changed, path);
    if (step.skip()) {
      return "The step " + name + " is left out.";
    }
    return "The step "
        + name
        + " is done with "
        + ListWords.and(keys.stream().map(key -> "another `" + key + "`").toList())
        + ": "
        + StepWords.sentence(step, Members.names(step, path, names), null, changed, masks);
  }
}
