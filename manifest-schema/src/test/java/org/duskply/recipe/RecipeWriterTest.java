package org.duskply.recipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.duskply.recipe.step.Compare;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Step;
import org.junit.jupiter.api.Test;

class RecipeWriterTest {
  private static final String WRITTEN =
      """
      duskply: 1
      title: "Boathouse café: pontoon side"
      notes: |-
        retake the hull
        if the rope shows
      grid: [6000, 4000]
      base: dusk
      frames:
        dusk: frames/bh-0007.tif
        late-sky: { file: frames/bh-0019.tif, exposure: 0.4 }
      masks:
        hull: { polygon: "1210,2204 1633,2190 1702,2410", feather: 24 }
      steps:
        - id: flashes
          group:
            - { pop: dusk, opacity: 0.85, mask: hull }
            - { pop: late-sky, mask: { except: [hull] } }
        - lay: late-sky
          blend: screen
          treat: [{ curve: { points: [[0, 0], [0.5, 0.42], [1, 0.95]] } }, { contrast: 0.15 }]
          mask: hull
      deliverables:
        print: { file: out/<title>.tif, profile: a98-rgb }
        web: out/<title>.jpg
      """;

  @Test
  void writesAsAPhotographerWould() {
    Recipe recipe =
        RecipeReader.read(
            "r.yaml",
            WRITTEN.replace(
                "{ pop: dusk, opacity: 0.85, mask: hull }",
                "{ mask: hull, opacity: 0.850, pop: dusk, skip: false, treat: [] }"));
    assertThat(RecipeWriter.write(recipe))
        .isEqualTo(WRITTEN.replace("opacity: 0.85, mask: hull", "mask: hull, opacity: 0.85"));
  }

  @Property(tries = 100, seed = "20260612")
  void readsBackEqual(@ForAll long seed) {
    Recipe recipe = AnyRecipe.of(seed);
    String text = RecipeWriter.write(recipe);
    Reading reading = RecipeReader.strict().check("written.yaml", text);
    assertThat(reading.problems()).allMatch(Problem::isNotice);
    assertThat(reading.orThrow().withPlaces(Places.NONE)).isEqualTo(recipe);
  }

  @Property(tries = 100, seed = "20260613")
  void writingAndReadingChangesNoHash(@ForAll long seed) {
    Recipe recipe = AnyRecipe.of(seed);
    Recipe again = RecipeReader.read("written.yaml", RecipeWriter.write(recipe));
    assertThat(Canonical.recipe(again)).isEqualTo(Canonical.recipe(recipe));
    assertThat(Canonical.picture(again)).isEqualTo(Canonical.picture(recipe));
    assertThat(RecipeWriter.write(again)).isEqualTo(RecipeWriter.write(recipe));
  }

  @Property(tries = 100, seed = "20260614")
  void canonicalTextIsARecipeThatSaysTheSame(@ForAll long seed) {
    Recipe recipe = AnyRecipe.of(seed);
    String canonical = Canonical.recipe(recipe);
    Recipe again = RecipeReader.read("canonical.json", canonical);
    assertThat(Canonical.recipe(again)).isEqualTo(canonical);
    assertThat(Canonical.pictureHash(again)).isEqualTo(Canonical.pictureHash(recipe));
  }

  @Test
  void numbersThatAreNoneAreRefused() {
    Recipe sound = RecipeReader.read("r.yaml", MistakeCases.SOUND);
    Step step =
        new Step(
            null,
            null,
            null,
            null,
            Double.NaN,
            false,
            new Pop("dusk", Compare.CHANNELS, List.of()),
            Map.of());
    Recipe recipe = Recipe.of("dusk", sound.frames(), List.of(step));
    assertThatThrownBy(() -> RecipeWriter.write(recipe))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a number in a recipe must be finite");
  }
}
