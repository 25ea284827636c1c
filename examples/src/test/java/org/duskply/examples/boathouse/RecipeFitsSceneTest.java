package org.duskply.examples.boathouse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.duskply.engine.Composite;
import org.duskply.engine.Engine;
import org.duskply.engine.Progress;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.RecipeReader;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.mask.Polygon;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

class RecipeFitsSceneTest {
  private static final Path RECIPES = Path.of("boathouse");

  /** The hand-written outlines lie where the geometry is seen; a pixel for rounding. */
  @ParameterizedTest
  @ValueSource(
      strings = {"gable", "gable-left", "door", "gable-right", "side-1", "side-2", "side-3"})
  void outlinesLieOnTheGeometry(String name) {
    Recipe recipe = RecipeReader.read(RECIPES.resolve("boathouse.yaml"));
    Map<String, List<double[]>> seen = Outlines.of(2400, 1600);
    Mask mask = recipe.masks().get(name);
    assertThat(mask).isNotNull();
    assertThat(mask.kind()).isInstanceOf(Polygon.class);
    List<Point> points = mask.kind() instanceof Polygon p ? p.points() : List.of();
    List<double[]> outline = seen.getOrDefault(name, List.of());
    assertThat(points).hasSameSizeAs(outline);
    for (int i = 0; i < points.size(); i++) {
      assertThat(points.get(i).x()).isCloseTo(outline.get(i)[0], within(1.0));
      assertThat(points.get(i).y()).isCloseTo(outline.get(i)[1], within(1.0));
    }
  }

  @Test
  void everyFrameOfTheRecipeIsShot() {
    Recipe recipe = RecipeReader.read(RECIPES.resolve("boathouse.yaml"));
    Set<String> names =
        Set.copyOf(Evening.shots().stream().map(s -> s.name() + " frames/" + s.file()).toList());
    recipe.frames().forEach((name, frame) -> assertThat(names).contains(name + " " + frame.file()));
    assertThat(recipe.frames().keySet().stream().filter(n -> n.startsWith("pop-")))
        .hasSize(Lights.FLASHES);
  }

  @Test
  void sevenMistakesAreNamedAtOnce() {
    assertThat(
            RecipeReader.strict().check(RECIPES.resolve("mistakes.yaml")).problems().stream()
                .map(problem -> problem.place().line())
                .distinct())
        .hasSize(7);
  }

  @Test
  void theRecipeRendersFromSmallFrames(@TempDir Path folder) throws IOException {
    Path frames = folder.resolve("frames");
    new CommandLine(new MakeFrames())
        .setOut(new PrintWriter(new StringWriter()))
        .execute("--size", "180x120", "--out", frames.toString(), "--threads", "2");
    Path recipe = folder.resolve("boathouse.yaml");
    Files.copy(RECIPES.resolve("boathouse.yaml"), recipe);
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(recipe)) {
      assertThat(composite.width()).isEqualTo(180);
      composite.deliver(folder, Set.of(), Progress.SILENT);
    }
    try (Stream<Path> files = Files.list(folder.resolve("out"))) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .contains("boathouse-print.tif", "boathouse.png")
          .hasSize(3);
    }
  }
}
