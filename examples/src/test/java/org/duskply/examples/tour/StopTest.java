package org.duskply.examples.tour;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.duskply.recipe.Alternates;
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
  void thenAllThatIsLitBeforeTheFire() {
    List<Step> lit = stops.get(3).recipe().steps();
    assertThat(recipe.steps()).startsWith(lit.toArray(Step[]::new));
    assertThat(lit.get(lit.size() - 1).id()).isEqualTo("water");
    assertThat(stops.get(3).recipe().finish().steps()).isEmpty();
  }

  @Test
  void endsWithTheWholeRecipeAndItsOtherPicture() {
    assertThat(stops).hasSize(6);
    assertThat(stops.get(4).recipe().steps()).isEqualTo(recipe.steps());
    assertThat(stops.get(4).recipe().finish()).isEqualTo(recipe.finish());
    Recipe other = stops.get(5).recipe();
    assertThat(other.steps()).isEqualTo(Alternates.apply(recipe, "no-fire").steps());
    assertThat(other.steps()).isNotEqualTo(recipe.steps());
  }

  @Test
  void allPicturesShowTheSamePart() {
    assertThat(stops)
        .allMatch(stop -> recipe.finish().crop() != null)
        .allMatch(stop -> recipe.finish().crop().equals(stop.recipe().finish().crop()));
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
