package org.duskply.examples.embed;

import java.nio.file.Path;
import java.util.Set;
import org.duskply.engine.Composite;
import org.duskply.engine.Delivered;
import org.duskply.engine.Engine;
import org.duskply.engine.Progress;
import org.duskply.recipe.RecipeException;

/**
 * The ten lines with which a program renders a recipe: {@code TenLines RECIPE FOLDER}. The README
 * quotes what stands between the two markers.
 */
public final class TenLines {
  private TenLines() {}

  public static void main(String[] arguments) {
    render(Path.of(arguments[0]), Path.of(arguments[1]));
  }

  static void render(Path recipe, Path out) {
    // README: begin
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(recipe)) {
      composite.notices().forEach(System.out::println);
      Delivered delivered = composite.deliver(out, Set.of(), Progress.SILENT);
      for (Delivered.File file : delivered.files()) {
        System.out.println(file.path() + ", " + file.width() + " x " + file.height());
      }
    } catch (RecipeException e) {
      e.problems().forEach(System.err::println);
    }
    // README: end
  }
}
