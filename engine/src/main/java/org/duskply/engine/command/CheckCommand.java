package org.duskply.engine.command;

import java.nio.charset.StandardCharsets;
import org.duskply.engine.Composite;
import org.duskply.engine.Engine;
import org.duskply.engine.Progress;
import org.duskply.recipe.Canonical;
import org.duskply.recipe.Recipe;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * {@code check}: reads the recipe, its frames' headers and a part of their pixels, and says all
 * that is wrong.
 */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = "Says all that is wrong with a recipe and its frames, at once; renders nothing.")
final class CheckCommand extends Action {
  @Option(
      names = "--canonical",
      description =
          "Print the recipe's canonical form (JSON by RFC 8785), of which its hash is taken.")
  private boolean canonical;

  @Option(
      names = "--headers-only",
      description =
          "Do not look at the frames' pixels to find whether all were developed alike; quicker.")
  private boolean headersOnly;

  @Mixin private RecipeOptions recipe = new RecipeOptions();

  CheckCommand(Streams streams) {
    super(streams);
  }

  @Override
  int act() {
    try (Engine engine = recipe.engine().threads(1).build();
        Composite composite = engine.open(recipe.recipe())) {
      notices(composite.notices());
      if (!headersOnly) {
        notices(composite.measure(Progress.SILENT));
      }
      print(composite.recipe());
    }
    return Exit.DONE;
  }

  private void print(Recipe right) {
    if (canonical) {
      byte[] text = (Canonical.recipe(right) + "\n").getBytes(StandardCharsets.UTF_8);
      machine().write(text, 0, text.length);
      machine().flush();
    } else {
      output().println(recipe.recipe() + " is right.");
      output().println("picture " + Canonical.pictureHash(right));
      output().println("recipe  " + Canonical.recipeHash(right));
    }
  }
}
