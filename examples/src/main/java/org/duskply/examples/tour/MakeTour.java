package org.duskply.examples.tour;

import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import org.duskply.engine.Composite;
import org.duskply.engine.Delivered;
import org.duskply.engine.DuskplyException;
import org.duskply.engine.Engine;
import org.duskply.engine.Progress;
import org.duskply.engine.View;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.RecipeException;
import org.duskply.recipe.RecipeReader;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Makes the README's pictures of the demo: {@code MakeTour [--recipe FILE] [--out DIR]}. */
@Command(
    name = "make-tour",
    mixinStandardHelpOptions = true,
    description = "Renders the README's pictures from the demo's frames.")
public final class MakeTour implements Callable<Integer> {
  @Option(
      names = "--recipe",
      defaultValue = "examples/boathouse/boathouse.yaml",
      description = "The demo's recipe.")
  private Path recipe = Path.of("examples", "boathouse", "boathouse.yaml");

  @Option(names = "--out", defaultValue = "examples/boathouse/tour", description = "The folder.")
  private Path out = Path.of("examples", "boathouse", "tour");

  public static void main(String[] arguments) {
    System.exit(new CommandLine(new MakeTour()).execute(arguments));
  }

  @Override
  public Integer call() {
    try (Engine engine = Engine.builder().build()) {
      Recipe read = RecipeReader.read(recipe);
      Path folder = recipe.toAbsolutePath().getParent();
      for (Stop stop : Stop.of(read)) {
        make(engine, stop, folder == null ? Path.of("") : folder);
      }
      return 0;
    } catch (RecipeException e) {
      e.problems().forEach(System.err::println);
    } catch (DuskplyException e) {
      System.err.println(e.getMessage());
    }
    return 1;
  }

  /** A picture goes into place finished or not at all; the engine sees to it. */
  private void make(Engine engine, Stop stop, Path folder) {
    try (Composite composite = engine.open(stop.recipe(), folder, View.WHOLE, Map.of())) {
      Delivered delivered = composite.deliver(out, Set.of(), Progress.SILENT);
      for (Delivered.File file : delivered.files()) {
        System.out.printf(
            "%s: %d x %d, %d kB%n", file.path(), file.width(), file.height(), file.bytes() / 1000);
      }
    }
  }
}
