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

  Path recipe() {
    return recipe;
  }

  /** The recipe's folder, written as the recipe was. */
  Path folder() {
    Path parent = recipe.getParent();
    return parent == null ? Path.of("") : parent;
  }

  /** Settings of an engine that reads from the allowed folders. */
  Engine.Builder engine() {
    Engine.Builder builder = Engine.builder();
    allowed.forEach(builder::allow);
    return builder;
  }
}
