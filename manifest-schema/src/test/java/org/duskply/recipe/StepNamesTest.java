package org.duskply.recipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;

class StepNamesTest {
  private static final Recipe RECIPE =
      RecipeReader.read(
          "names.yaml",
          """
          duskply: 1
          base: dusk
          frames: { dusk: a.tif, hull: b.tif, sky: c.tif, ember: d.tif, willow: e.tif }
          masks: { m: {} }
          steps:
            - { pop: hull, mask: m }
            - { lay: sky }
            - { lay: sky, id: second-sky }
            - id: water
              group:
                - { pop: willow }
                - { adjust: [{ exposure: 1 }], mask: m }
            - group:
                - { adjust: [{ power: 2 }], mask: m }
            - { pop: dusk, id: ember }
            - { lay: ember }
          """);
  private static final StepNames NAMES = StepNames.of(RECIPE);

  @Test
  void idThenFrameThatOneStepAloneUsesThenPlace() {
    assertThat(NAMES.all())
        .containsExactly(
            Map.entry("steps/#1", "hull"),
            Map.entry("steps/#2", "#2"), // sky is used twice
            Map.entry("steps/#3", "second-sky"),
            Map.entry("steps/#4", "water"),
            Map.entry("steps/#4/group/#1", "willow"),
            Map.entry("steps/#4/group/#2", "water/#2"),
            Map.entry("steps/#5", "#5"),
            Map.entry("steps/#5/group/#1", "#5/#1"),
            Map.entry("steps/#6", "ember"),
            Map.entry("steps/#7", "#7")); // another step has ember for its id
  }

  @Test
  void everyNameLeadsBackToItsStep() {
    NAMES.all().forEach((path, name) -> assertThat(NAMES.path(name)).hasValue(path));
    assertThat(NAMES.all().values()).doesNotHaveDuplicates();
  }

  @Test
  void aPlaceServesForAStepWithAName() {
    assertThat(NAMES.path("#1")).hasValue("steps/#1");
    assertThat(NAMES.path("water/#1")).hasValue("steps/#4/group/#1");
    assertThat(NAMES.path("#8")).isEmpty();
  }

  @Test
  void helpForAMistypedName() {
    assertThat(NAMES.path("watr")).isEmpty();
    assertThat(NAMES.nearest("watr")).hasValue("water");
    assertThat(NAMES.nearest("completely-else")).isEmpty();
    assertThatThrownBy(() -> NAMES.name("steps/#9")).hasMessage("there is no step at steps/#9");
  }

  @Test
  void pathsArePlacesOfTheText() {
    assertThat(RECIPE.places().at("steps/#4/group/#2").line()).isEqualTo(12);
    assertThat(RECIPE.places().at("steps/#4/group/#2/mask").toString())
        .isEqualTo("names.yaml:12:44");
    // A part that the text does not have lies where the nearest part around it does.
    assertThat(RECIPE.places().at("steps/#1/opacity")).isEqualTo(RECIPE.places().at("steps/#1"));
    assertThat(RECIPE.places().snippet(RECIPE.places().at("base")))
        .isEqualTo("    2 | base: dusk\n      |       ^");
  }
}
