package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import java.util.List;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.Problem;
import org.duskply.recipe.RecipeException;
import org.junit.jupiter.api.Test;

/** Law 7: what is wrong with frames is told all at once, each with its place in the recipe. */
class AllProblemsLawTest extends ThreeFrames {
  @Test
  void everythingWrongWithTheFramesIsToldAtOnceWithItsPlace() {
    Desk desk = desk(40, 30);
    desk.write("frames/2.tif", new Desk(folder, 41, 30).file(2).bytes());
    desk.write("frames/3.tif", new byte[0]);
    Path recipe =
        desk.recipe(
            """
            duskply: 1
            base: dusk
            frames:
              dusk: frames/0.tif
              gone: frames/gone.tif
              other: frames/2.tif
              empty: frames/3.tif
            steps: [ { pop: gone }, { pop: other }, { pop: empty } ]
            """);
    try (Engine engine = Engine.builder().build()) {
      RecipeException told = catchThrowableOfType(RecipeException.class, () -> engine.open(recipe));
      List<Problem> problems = told.problems().stream().filter(p -> !p.isNotice()).toList();
      assertThat(problems).hasSize(3);
      assertThat(problems.stream().map(p -> p.place().line())).containsExactlyInAnyOrder(5, 6, 7);
      assertThat(told)
          .hasMessageContaining("frames/gone.tif")
          .hasMessageContaining("41 × 30")
          .hasMessageContaining("40 × 30")
          .hasMessageContaining("3.tif");
    }
  }

  @Test
  void aBaseThatIsTransparentIsRefused() {
    Desk desk = desk(40, 30);
    desk.write(
        "frames/0.tif",
        new TiffFile(40, 30, 4, 16, (x, y, c) -> 30000).shorts(338, 2).strips(8).bytes());
    Path recipe = desk.recipe(HEAD + "steps: [ { pop: a } ]\n");
    try (Engine engine = Engine.builder().build()) {
      assertThatThrownBy(() -> engine.open(recipe))
          .isInstanceOf(RecipeException.class)
          .hasMessageContaining("transparent");
    }
  }
}
