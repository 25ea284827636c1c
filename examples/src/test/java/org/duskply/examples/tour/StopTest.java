package org.duskply.examples.tour;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.RecipeReader;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.step.Verb;
import org.junit.jupiter.api.Test;

/** The tour of the demo's recipe shows what the README says that it shows. */
class StopTest {
  private static final Path RECIPE =
      Path.of(System.getProperty("basedir", "."), "boathouse", "boathouse.yaml");

  private final Recipe recipe = RecipeReader.read(RECIPE);
  private final List<Stop> stops = Stop.of(recipe);

  @Test
  void beginsWithTwoFramesAsShot() {
    assertThat(stops.get(0).recipe().base()).isEqualTo(recipe.base());
    assertThat(recipe.frames()).containsKey(stops.get(1).recipe().base());
    assertThat(stops.get(0).recipe().steps()).isEmpty();
    assertThat(stops.get(1).recipe().steps()).isEmpty();
  }

  @Test
  void thenAddsEveryPopAndNothingElse() {
    List<Verb> shown = leaves(stops.get(2).recipe().steps()).toList();
    assertThat(shown).hasSize(14).allMatch(verb -> verb instanceof Pop);
    assertThat(leaves(recipe.steps()).filter(verb -> verb instanceof Pop)).isEqualTo(shown);
  }

  @Test
  void endsWithTheWholeRecipe() {
    assertThat(stops).hasSize(4);
    assertThat(stops.get(3).recipe().steps()).isEqualTo(recipe.steps());
    assertThat(stops.get(3).recipe().base()).isEqualTo(recipe.base());
  }

  private static Stream<Verb> leaves(List<Step> steps) {
    return steps.stream()
        .flatMap(
            step ->
                step.verb() instanceof Group group
                    ? leaves(group.steps())
                    : Stream.of(step.verb()));
  }
}
