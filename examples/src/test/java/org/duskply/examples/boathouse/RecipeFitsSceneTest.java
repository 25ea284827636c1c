package org.duskply.examples.boathouse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.duskply.engine.Composite;
import org.duskply.engine.Engine;
import org.duskply.engine.Progress;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.RecipeReader;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

class RecipeFitsSceneTest {
  private static final Path RECIPES = Path.of("boathouse");

  /** The outlines of the drawing lie where the geometry is seen; a pixel for rounding. */
  @ParameterizedTest
  @ValueSource(
      strings = {"gable", "gable-left", "door", "gable-right", "side-1", "side-2", "side-3"})
  void outlinesLieOnTheGeometry(String name) throws IOException {
    String drawing = Files.readString(RECIPES.resolve("outlines.svg"));
    Matcher polygon =
        Pattern.compile("<polygon id=\"" + name + "\" points=\"([^\"]+)\"/>").matcher(drawing);
    assertThat(polygon.find()).as(name).isTrue();
    String[] points = polygon.group(1).trim().split("\\s+");
    List<double[]> outline = Outlines.of(2400, 1600).getOrDefault(name, List.of());
    assertThat(points).hasSameSizeAs(outline);
    for (int i = 0; i < points.length; i++) {
      String[] point = points[i].split(",");
      assertThat(Double.parseDouble(point[0])).isCloseTo(outline.get(i)[0], within(1.0));
      assertThat(Double.parseDouble(point[1])).isCloseTo(outline.get(i)[1], within(1.0));
    }
  }

  @Test
  void eachPaneHasItsSwitch() {
    Recipe recipe = RecipeReader.read(RECIPES.resolve("boathouse.yaml"));
    Step windows = recipe.steps().get(0);
    assertThat(windows.verb()).isInstanceOf(Group.class);
    List<Step> panes = windows.verb() instanceof Group group ? group.steps() : List.of();
    assertThat(panes.stream().map(Step::id))
        .containsExactly("gable-left", "door", "gable-right", "side-1", "side-2", "side-3");
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
    Files.copy(RECIPES.resolve("outlines.svg"), folder.resolve("outlines.svg"));
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(recipe)) {
      assertThat(composite.width()).isEqualTo(180);
      composite.deliver(folder, Set.of(), Progress.SILENT);
    }
    try (Stream<Path> files = Files.list(folder.resolve("out"))) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .contains("boathouse-print.tif", "boathouse.png")
          .anyMatch(name -> name.startsWith("boathouse-no-fire-"))
          .hasSize(4);
    }
  }
}
