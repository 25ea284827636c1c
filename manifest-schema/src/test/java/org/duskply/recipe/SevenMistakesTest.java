package org.duskply.recipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** A recipe as it comes from the field: seven mistakes, named all at once. */
class SevenMistakesTest {
  private static final String RECIPE =
      """
      duskply: 1
      title: Boathouse: pontoon side
      grid: [6000, 4000]
      base: dsuk
      frames:
        dusk:     frames/bh-0007.tif
        pop-hull: frames/bh-0012.tif
      masks:
        hull: { polygon: "1210,2204 1633,2190", fether: 24 }
      steps:
        - { pop: pop-hull, mask: hull, opacity: .85 }
        - { pop: dusk, blend: screen, mask: hul }
      """;

  private static final String SAID =
      """
      boathouse.yaml:2:17: a text with a colon and a space in it needs quotes: title: "Boathouse: pontoon side"
        in title
          2 | title: Boathouse: pontoon side
            |                 ^
      boathouse.yaml:4:7: there is no frame called `dsuk`; did you mean `dusk`?
        in base
          4 | base: dsuk
            |       ^
      boathouse.yaml:9:20: `polygon` has 2 points; it needs at least 3
        in masks/hull/polygon
          9 |   hull: { polygon: "1210,2204 1633,2190", fether: 24 }
            |                    ^
      boathouse.yaml:9:43: this version has no key `fether` here; did you mean `feather`? Known keys here are polygon, rule, within, except, widen, feather, inverted and strength
        in masks/hull/fether
          9 |   hull: { polygon: "1210,2204 1633,2190", fether: 24 }
            |                                           ^
      boathouse.yaml:11:43: `opacity` is `.85`; it takes a number from 0 to 1; write 0.85, with a digit before the point
        in steps/#1/opacity
         11 |   - { pop: pop-hull, mask: hull, opacity: .85 }
            |                                           ^
      boathouse.yaml:12:18: `blend` belongs to `lay`, but this step is `pop`
        in steps/#2/blend
         12 |   - { pop: dusk, blend: screen, mask: hul }
            |                  ^
      boathouse.yaml:12:39: there is no mask called `hul`; did you mean `hull`?
        in steps/#2/mask
         12 |   - { pop: dusk, blend: screen, mask: hul }
            |                                       ^""";

  @Test
  void allSevenAreNamedWithTheirPlaces() {
    assertThatThrownBy(() -> RecipeReader.read("boathouse.yaml", RECIPE))
        .isInstanceOf(RecipeException.class)
        .hasMessage(SAID);
  }

  @Test
  void whatWasFoundExpectedAndNearestIsThereForPrograms() {
    Problem third = RecipeReader.strict().check("boathouse.yaml", RECIPE).problems().get(3);
    assertThat(third.path()).isEqualTo("masks/hull/fether");
    assertThat(third.found()).isEqualTo("fether");
    assertThat(third.nearest()).isEqualTo("feather");
    assertThat(third.expected())
        .isEqualTo("polygon, rule, within, except, widen, feather, inverted and strength");
    assertThat(third.place()).isEqualTo(new Place("boathouse.yaml", 9, 43));
  }
}
