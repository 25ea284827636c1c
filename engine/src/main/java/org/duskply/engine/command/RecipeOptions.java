package org.duskply.engine.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.Engine;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Which recipe, and where its frames may lie. */
final class RecipeOptions {
  @Parameters(paramLabel = "RECIPE", description = "The recipe's file.")
  private Path recipe = Path.of("");

  @Option(
      names = "--allow",
      paramLabel = "DIR",
      description =
          "A folder beside the recipe's own that frames may be read from. May be repeated.")
  private List<Path> allowed = new ArrayList<>();

  @Option(
      names = "--tolerant",
      description =
          "Read frames that are cut short or damaged as far as they go, with grey in place of what"
              + " is missing.")
  private boolean tolerant;

  Path recipe() {
    return recipe;
  }

  /** The recipe's folder, written as the recipe was. */
  Path folder() {
    Path parent = recipe.getParent();
    return parent == null ? Path.of("") : parent;
  }

  /** Settings of an engine that reads from the allowed folders, as strictly as was asked for. */
  Engine.Builder engine() {
    Engine.Builder builder = Engine.builder().tolerant(tolerant);
    allowed.forEach(builder::allow);
    return builder;
  }
}
