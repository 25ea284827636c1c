package org.duskply.engine.command;

import java.nio.charset.StandardCharsets;
import org.duskply.recipe.RecipeSchema;
import picocli.CommandLine.Command;

/** {@code schema}: prints the JSON Schema of recipes, for editors. */
@Command(
    name = "schema",
    mixinStandardHelpOptions = true,
    description = "Prints the JSON Schema (2020-12) of recipes, for editors.")
final class SchemaCommand extends Action {
  SchemaCommand(Streams streams) {
    super(streams);
  }

  @Override
  int act() {
    byte[] text = RecipeSchema.text().getBytes(StandardCharsets.UTF_8);
    machine().write(text, 0, text.length);
    machine().flush();
    return Exit.DONE;
  }
}
