package org.duskply.engine.command;

import java.io.PrintStream;
import org.duskply.recipe.RecipeSchema;
import picocli.CommandLine.Command;

/** {@code schema}: prints the JSON Schema of recipes, for editors. */
@Command(
    name = "schema",
    mixinStandardHelpOptions = true,
    description = "Prints the JSON Schema (2020-12) of recipes, for editors.")
final class SchemaCommand extends Action {
  SchemaCommand(PrintStream output, PrintStream errors) {
    super(output, errors);
  }

  @Override
  int act() {
    output().print(RecipeSchema.text());
    return Exit.DONE;
  }
}
