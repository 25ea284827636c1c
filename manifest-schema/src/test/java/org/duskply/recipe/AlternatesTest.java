package org.duskply.recipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Step;
import org.junit.jupiter.api.Test;

/** An alternate is the recipe with its changes written into the steps. */
class AlternatesTest {
  private static final String HEAD =
      """
      duskply: 1
      base: dusk
      frames: { dusk: a.tif, pop: b.tif, sky: c.tif }
      masks: { hull: { polygon: "0,0 9,0 9,9" }, oar: { polygon: "5,0 9,0 9,9" } }
      """;
  private static final String RECIPE =
      HEAD
          + """
          steps:
            - { id: water, pop: pop, mask: hull, opacity: 0.8, treat: [{ exposure: 1 }], title: t }
            - { lay: sky, skip: true }
            - id: pair
              opacity: 0.5
              group: [{ pop: pop }, { adjust: [{ power: 2 }] }]
          finish: { steps: [{ adjust: [{ saturation: 2 }] }] }
          alternates:
            one:
              skip: ["#1"]
              show: [sky]
              set: { pair/#2: { adjust: [{ power: 3 }] }, pair: { opacity: 0.25 } }
            two:
              set:
                water: { mask: { polygon: "1,1 2,1 2,2", feather: 3 }, treat: [{ exposure: 0.5 }] }
                finish/#1: { mask: oar, skip: true }
                sky: { lay: pop, blend: screen }
          """;

  private static Recipe read(String text) {
    return RecipeReader.read("r.yaml", text);
  }

  private static void same(Recipe alternate, String steps) {
    Recipe expected = read(HEAD + steps);
    assertThat(alternate.steps()).isEqualTo(expected.steps());
    assertThat(alternate.finish()).isEqualTo(expected.finish());
    assertThat(Canonical.pictureHash(alternate)).isEqualTo(Canonical.pictureHash(expected));
  }

  @Test
  void mainIsTheRecipeItself() {
    Recipe recipe = read(RECIPE);
    assertThat(Alternates.apply(recipe, Alternate.MAIN)).isSameAs(recipe);
  }

  @Test
  void stepsAreLeftOutBroughtInAndChangedInGroups() {
    same(
        Alternates.apply(read(RECIPE), "one"),
        """
        steps:
          - { id: water, pop: pop, mask: hull, opacity: 0.8, treat: [{ exposure: 1 }], title: t, skip: true }
          - { lay: sky }
          - id: pair
            opacity: 0.25
            group: [{ pop: pop }, { adjust: [{ power: 3 }] }]
        finish: { steps: [{ adjust: [{ saturation: 2 }] }] }
        """);
  }

  @Test
  void keysAreMergedAndOtherKeysStay() {
    same(
        Alternates.apply(read(RECIPE), "two"),
        """
        steps:
          - { id: water, pop: pop, mask: { polygon: "1,1 2,1 2,2", feather: 3 }, opacity: 0.8, treat: [{ exposure: 0.5 }], title: t }
          - { id: sky, lay: pop, blend: screen, skip: true }
          - id: pair
            opacity: 0.5
            group: [{ pop: pop }, { adjust: [{ power: 2 }] }]
        finish: { steps: [{ adjust: [{ saturation: 2 }], mask: oar, skip: true }] }
        """);
  }

  /** Else masks that ask for steps, and alternates, would no longer find them. */
  @Test
  void stepsKeepTheirNamesWhenFramesChange() {
    String text =
        HEAD
            + """
            steps: [{ lay: sky, mask: hull }, { lay: pop }, { dodge: 1, mask: { steps: [sky, pop] } }]
            alternates: { swapped: { set: { sky: { lay: pop }, pop: { opacity: 0.5 } } } }
            """;
    Recipe swapped = Alternates.apply(read(text), "swapped");
    assertThat(StepNames.of(swapped).all()).isEqualTo(StepNames.of(read(text)).all());
    assertThat(Canonical.picture(swapped)).contains("{\"steps\":[\"#1\",\"#2\"]}");
    // Written out it is a sound recipe, which the names must hold together.
    assertThat(read(RecipeWriter.write(swapped)).steps()).isEqualTo(swapped.steps());
  }

  @Test
  void stepsHaveOneCanonicalNameHoweverTheyAreCalled() {
    String plain =
        "masks: { m: { steps: [sky] } }\nsteps: [{ lay: sky }, { id: w, pop: pop, skip: true }, { dodge: 1, mask: m }]\nalternates: { a: { skip: [sky, \"#3\"], show: [w], set: { w: { opacity: 0.5 } } } }\n";
    String head = HEAD.replaceAll("masks:.*\n", "");
    String otherwise =
        plain
            .replace("steps: [sky]", "steps: [\"#1\"]")
            .replace("[sky, \"#3\"]", "[\"#3\", \"#1\"]")
            .replace("show: [w]", "show: [\"#2\"]")
            .replace("set: { w:", "set: { \"#2\":");
    assertThat(Canonical.recipe(read(head + otherwise)))
        .isEqualTo(Canonical.recipe(read(head + plain)));
    assertThat(Canonical.recipe(read(head + plain))).contains("\"skip\":[\"#3\",\"sky\"]");
  }

  @Test
  void everythingElseStays() {
    Recipe recipe = read(RECIPE);
    Recipe two = Alternates.apply(recipe, "two");
    assertThat(two.withSteps(recipe.steps()).withFinish(recipe.finish())).isEqualTo(recipe);
  }

  @Test
  void whatIsChangedStandsWhereItIsWritten() {
    Recipe two = Alternates.apply(read(RECIPE), "two");
    assertThat(two.places().at("steps/#1/treat/#1").line()).isEqualTo(19);
    assertThat(two.places().at("steps/#1/opacity").line()).isEqualTo(6);
    assertThat(two.places().at("finish/steps/#1/mask")).hasToString("r.yaml:20:26");
    assertThat(two.places().at("finish/steps/#1/adjust").line()).isEqualTo(11);
    Recipe one = Alternates.apply(read(RECIPE), "one");
    assertThat(one.places().at("steps/#3/group/#2/adjust/#1").line()).isEqualTo(16);
    assertThat(one.places().at("steps/#3/group/#1").line()).isEqualTo(10);
  }

  @Test
  void aProgramMayBuildThem() {
    Recipe recipe = read(HEAD + "steps: [{ id: water, pop: pop }]");
    Map<String, Map<String, Object>> set =
        Map.of("water", Map.of("opacity", 0.5, "mask", Map.of("except", List.of("hull"))));
    Recipe built =
        recipe.withAlternates(Map.of("x", new Alternate(List.of(), List.of(), set, Map.of())));
    assertThat(read(RecipeWriter.write(built))).isEqualTo(built);
    same(
        Alternates.apply(built, "x"),
        "steps: [{ id: water, pop: pop, opacity: 0.5, mask: { except: [hull] } }]");
    Map<String, Map<String, Object>> wrong = Map.of("water", Map.of("opacity", 3));
    Recipe unsound =
        recipe.withAlternates(Map.of("x", new Alternate(List.of(), List.of(), wrong, Map.of())));
    assertThatThrownBy(() -> Alternates.apply(unsound, "x"))
        .isInstanceOf(RecipeException.class)
        .hasMessageContaining("`opacity` is `3`; it takes a number from 0 to 1");
    assertThatThrownBy(() -> Alternates.apply(unsound, "y"))
        .isInstanceOf(IllegalArgumentException.class);
    Recipe lost =
        recipe.withAlternates(
            Map.of("x", new Alternate(List.of("oar"), List.of(), Map.of(), Map.of())));
    assertThatThrownBy(() -> Alternates.apply(lost, "x"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("there is no step called oar");
  }

  @Test
  void theyBelongToTheRecipeAndNotToThePicture() {
    Recipe bare = read(RECIPE.substring(0, RECIPE.indexOf("alternates:")));
    assertThat(Canonical.pictureHash(read(RECIPE))).isEqualTo(Canonical.pictureHash(bare));
    assertThat(Canonical.recipeHash(read(RECIPE))).isNotEqualTo(Canonical.recipeHash(bare));
  }

  @Test
  void aChangeHasOneCanonicalFormHoweverItIsWritten() {
    String otherwise =
        RECIPE
            .replace("\"1,1 2,1 2,2\"", "[[1, 1], [2.0, 1], [2, 2]]")
            .replace("[{ exposure: 0.5 }]", "[{ exposure: { stops: 0.50 } }]")
            .replace("feather: 3", "inverted: false, feather: 3");
    assertThat(otherwise).isNotEqualTo(RECIPE);
    assertThat(Canonical.recipe(read(otherwise))).isEqualTo(Canonical.recipe(read(RECIPE)));
    String reset = RECIPE.replace("pair: { opacity: 0.25 }", "pair: { opacity: 1 }");
    assertThat(Canonical.recipe(read(reset))).contains("\"pair\":{\"opacity\":1}");
  }

  @Test
  void aHundredWindowsEachWithASwitch() {
    StringBuilder text = new StringBuilder(HEAD).append("steps:\n");
    StringBuilder off = new StringBuilder("alternates:\n  dark:\n    skip: [");
    for (int i = 0; i < 100; i++) {
      text.append("  - { id: w").append(i).append(", pop: pop, mask: hull }\n");
      off.append(i == 0 ? "" : ", ").append("w").append(i);
    }
    Recipe dark = Alternates.apply(read(text.append(off).append("]\n").toString()), "dark");
    assertThat(dark.steps()).hasSize(100).allMatch(Step::skip);
  }

  @Test
  void membersOfAChangedGroupAreKept() {
    Recipe one = Alternates.apply(read(RECIPE), "one");
    Group group = (Group) one.steps().get(2).verb();
    assertThat(group.steps()).hasSize(2);
    assertThat(group.steps().get(0))
        .isEqualTo(((Group) read(RECIPE).steps().get(2).verb()).steps().get(0));
  }
}
