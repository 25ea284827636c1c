package org.duskply.benchmarks.sidebyside;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.duskply.engine.Composite;
import org.duskply.engine.Delivered;
import org.duskply.engine.Engine;
import org.duskply.engine.Progress;
import org.duskply.engine.View;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.RecipeReader;
import org.duskply.recipe.step.Step;

/**
 * What an edit takes: {@code Edits RECIPE FOLDER ROUNDS}. In one engine a preview and the full size
 * are delivered into the folder, then again after the opacity of one step after the other has been
 * changed. Each round begins with an engine that has kept nothing; one round goes ahead uncounted,
 * so that Java has compiled what it will. Prints a table.
 */
public final class Edits {
  /** Working memory and what is kept, in bytes: together 1.5 GB. */
  private static final long MEMORY = 500_000_000;

  private static final long KEEP = 1_000_000_000;

  /**
   * What Java is told: an engine that keeps a lot is best served by a collector that stops all at
   * once, with both cores. One that works beside it takes half as long again for an edit.
   */
  static final List<String> FLAGS = List.of("-Xmx2g", "-XX:+UseParallelGC");

  /** A preview of 1500 pixels, of frames of 6000. */
  private static final int REDUCTION = 4;

  private static final double NANOS = 1e9;
  private static final String COLD = "nothing kept";
  private static final String LAST = "last step, #%d";
  private static final String THIRD = "step #%d";
  private static final String POP = "last pop, #%d";

  /** The greatest share of the time with nothing kept, where one is asked for. */
  private static final Map<Row, Double> MOST =
      Map.of(new Row(LAST, true), 0.10, new Row(THIRD, false), 0.30);

  private final Path folder;
  private final Path out;
  private final Map<Row, Figures> figures = new LinkedHashMap<>();

  /** What was changed, and whether the preview was delivered or the full size. */
  private record Row(String edit, boolean preview) {}

  /** What each round gave. */
  private record Figures(int step, List<Double> seconds, List<Double> decoded) {}

  private Edits(Path folder, Path out) {
    this.folder = folder;
    this.out = out;
  }

  /** Measures. */
  public static void main(String[] arguments) {
    Path file = Path.of(arguments[0]).toAbsolutePath();
    Path out = Path.of(arguments[1]);
    System.out.print(table(file, out, Integer.parseInt(arguments[2])));
  }

  /** The table of some rounds. */
  static String table(Path file, Path out, int rounds) {
    Recipe recipe = RecipeReader.read(file);
    Path folder = file.resolveSibling("");
    new Edits(folder, out).round(recipe);
    Edits edits = new Edits(folder, out);
    for (int i = 0; i < rounds; i++) {
      edits.round(recipe);
    }
    return edits.table();
  }

  private void round(Recipe recipe) {
    int last = recipe.steps().size();
    try (Engine engine = Engine.builder().memory(MEMORY).keep(KEEP).build()) {
      deliver(engine, recipe, COLD, 0);
      Recipe edited = fade(recipe, last);
      deliver(engine, edited, LAST, last);
      edited = fade(edited, 3);
      deliver(engine, edited, THIRD, 3);
      edited = fade(edited, last - 1);
      deliver(engine, edited, POP, last - 1);
    }
  }

  /** A recipe with less of one step. */
  private static Recipe fade(Recipe recipe, int number) {
    List<Step> steps = new ArrayList<>(recipe.steps());
    Step step = steps.get(number - 1);
    steps.set(
        number - 1,
        new Step(
            step.id(),
            step.title(),
            step.notes(),
            step.mask(),
            0.9 * step.opacity(),
            step.skip(),
            step.verb(),
            step.extensions()));
    return recipe.withSteps(steps);
  }

  private void deliver(Engine engine, Recipe recipe, String edit, int step) {
    for (boolean preview : new boolean[] {true, false}) {
      Figures row =
          figures.computeIfAbsent(
              new Row(edit, preview), r -> new Figures(step, new ArrayList<>(), new ArrayList<>()));
      View view = View.WHOLE.reducedBy(preview ? REDUCTION : 1);
      long start = System.nanoTime();
      try (Composite composite = engine.open(recipe, folder, view, Map.of())) {
        Delivered delivered = composite.deliver(out, Set.of(), Progress.SILENT);
        row.seconds.add((System.nanoTime() - start) / NANOS);
        row.decoded.add((double) delivered.unitsDecoded());
      }
    }
  }

  private String table() {
    List<List<String>> rows = new ArrayList<>();
    figures.forEach(
        (row, figures) ->
            rows.add(
                List.of(
                    String.format(Locale.ROOT, row.edit, figures.step),
                    row.preview ? "1/" + REDUCTION : "full size",
                    Report.spread("%.3f", new Series(figures.seconds)),
                    ofCold(row, figures),
                    String.format(Locale.ROOT, "%.0f", new Series(figures.decoded).greatest()))));
    return Report.table(List.of("edit", "picture", "wall, s", "of cold", "pieces decoded"), rows);
  }

  private String ofCold(Row row, Figures edited) {
    Figures cold = figures.get(new Row(COLD, row.preview));
    if (cold == null || cold == edited) {
      return "";
    }
    double ratio = new Series(edited.seconds).median() / new Series(cold.seconds).median();
    Double most = MOST.get(row);
    return most == null ? String.format(Locale.ROOT, "%.3f", ratio) : Report.judged(ratio, most);
  }
}
