package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.Pictures;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.Frame;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.RecipeReader;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.mask.Polygon;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Step;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Recipes edited at random, one after the other, by engines that keep their work: each writes the
 * very file that a fresh engine writes, however much it keeps and whatever it has rendered before.
 */
@Tag("bits")
class EditedRecipesTest {
  private static final int WIDTH = 120;
  private static final int HEIGHT = 80;
  private static final int EDITS = 5;

  /** Bands of 8 rows, so that small pictures have many. */
  private static final PlanSettings SETTINGS = new PlanSettings(8, 33, true);

  @TempDir Path folder;

  static List<String> names() throws IOException {
    return GoldenRecipesTest.names();
  }

  private Path recipe(String name) throws IOException {
    Desk desk = new Desk(folder, WIDTH, HEIGHT);
    for (int i = 0; i < 6; i++) {
      desk.frame("frames/" + i + ".tif", i);
    }
    desk.frame("frames/none.tif", 6); // read once an edit shows a step that was left out
    desk.frame("frames/p3.tif", 7, NamedSpace.DISPLAY_P3);
    desk.frame("frames/rec2020.tif", 8, NamedSpace.REC2020);
    desk.frame("frames/a98.tif", 9, NamedSpace.A98_RGB);
    desk.write(
        "masks/painted.tif",
        new TiffFile(WIDTH, HEIGHT, 1, 8, (x, y, c) -> desk.sample(11, x, y, c) / 257).bytes());
    Path golden = Path.of("src", "test", "resources", "golden");
    desk.write("masks/outlines.svg", Files.readAllBytes(golden.resolve("outlines.svg")));
    String deliverables =
        "deliverables: { print: print.tif, web: { file: web.png, long-edge: 50, depth: 8 } }\n";
    return desk.recipe(Files.readString(golden.resolve(name + ".yaml")) + deliverables);
  }

  @ParameterizedTest
  @MethodSource("names")
  void keptWorkChangesNoBit(String name) throws IOException {
    Random random = new Random(name.hashCode());
    Recipe edited = RecipeReader.read(recipe(name));
    List<Engine> keeping = new ArrayList<>();
    for (long keep : new long[] {1, 20_000, 300_000, 1 << 26}) {
      keeping.add(Engine.builder().settings(SETTINGS).threads(2).keep(keep).build());
    }
    for (int edit = 0; edit <= EDITS; edit++) {
      View view = View.WHOLE.reducedBy(new int[] {1, 3, 1}[random.nextInt(3)]);
      List<byte[]> anew;
      try (Engine fresh = Engine.builder().settings(SETTINGS).threads(2).build()) {
        anew = files(fresh, edited, view);
      }
      for (int e = 0; e < keeping.size(); e++) {
        assertThat(files(keeping.get(e), edited, view))
            .as("%s after edit %d, engine %d, %s: %s", name, edit, e, view, edited.steps())
            .usingElementComparator((a, b) -> Arrays.compare(a, b))
            .isEqualTo(anew);
      }
      edited = edit(edited, random);
    }
    keeping.forEach(Engine::close);
  }

  private List<byte[]> files(Engine engine, Recipe recipe, View view) {
    try (Composite composite = engine.open(recipe, folder, view, Map.of())) {
      return composite.deliver(folder.resolve("out"), Set.of(), Progress.SILENT).files().stream()
          .map(file -> Pictures.bytes(file.path()))
          .toList();
    }
  }

  /** What is done at the desk: other opacities, masks, orders and exposures, steps left out. */
  private static Recipe edit(Recipe recipe, Random random) {
    return switch (random.nextInt(5)) {
      case 0 -> recipe.withFrames(exposed(recipe.frames(), random));
      case 1 -> recipe.withSteps(swapped(recipe.steps(), random));
      default -> recipe.withSteps(edited(recipe.steps(), random));
    };
  }

  private static Map<String, Frame> exposed(Map<String, Frame> frames, Random random) {
    Map<String, Frame> others = new LinkedHashMap<>(frames);
    String name = List.copyOf(frames.keySet()).get(random.nextInt(frames.size()));
    Frame f = others.get(name);
    others.put(
        name,
        new Frame(
            f.file(),
            random.nextInt(3) - 1,
            f.match(),
            f.gel(),
            f.profile(),
            f.readsAs(),
            f.coverage(),
            f.extensions()));
    return others;
  }

  /** Steps that are read by name stand before those that read them, and stay there. */
  private static List<Step> swapped(List<Step> steps, Random random) {
    List<Step> others = new ArrayList<>(steps);
    int i = random.nextInt(Math.max(1, steps.size() - 1));
    if (i + 1 < steps.size() && steps.get(i).id() == null && steps.get(i + 1).id() == null) {
      Collections.swap(others, i, i + 1);
    }
    return others;
  }

  private static List<Step> edited(List<Step> steps, Random random) {
    List<Step> others = new ArrayList<>(steps);
    int i = random.nextInt(steps.size());
    Step step = steps.get(i);
    if (step.verb() instanceof Group group && random.nextBoolean()) {
      others.set(i, step.withVerb(group.withSteps(edited(group.steps(), random))));
    } else {
      others.set(
          i,
          switch (random.nextInt(4)) {
            case 0 -> with(step, step.mask(), random.nextInt(5) / 4.0);
            case 1 -> with(step, mask(random), step.opacity());
            case 2 -> with(step, null, 0.5);
            default -> step.skipped();
          });
    }
    return others;
  }

  private static Step with(Step s, @Nullable MaskUse mask, double opacity) {
    return new Step(s.id(), s.title(), s.notes(), mask, opacity, false, s.verb(), s.extensions());
  }

  private static MaskUse mask(Random random) {
    List<Point> corners = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      corners.add(new Point(random.nextInt(WIDTH), random.nextInt(HEIGHT)));
    }
    return new MaskUse.Inline(
        new Mask(
            new Polygon(corners, FillRule.NONZERO),
            List.of(),
            List.of(),
            0,
            random.nextInt(3) * 2,
            random.nextInt(4) == 0,
            1,
            Map.of()));
  }
}
