package org.duskply.engine.command;

import java.io.PrintStream;
import org.duskply.engine.Composite;
import org.duskply.engine.Engine;
import org.duskply.recipe.Canonical;
import org.duskply.recipe.Recipe;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code check}: reads the recipe and its frames' headers, and says all that is wrong. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = "Says all that is wrong with a recipe and its frames, at once; renders nothing.")
final class CheckCommand extends Action {
  @Mixin private Opened opened = new Opened();

  @Option(
      names = "--canonical",
      description = "Print the recipe's canonical form (RFC 8785) in place of the hashes.")
  private boolean canonical;

  CheckCommand(PrintStream output, PrintStream errors) {
    super(output, errors);
  }

  @Override
  int act() {
    try (Engine engine = opened.engine();
        Composite composite = engine.open(opened.recipe(), opened.view())) {
      composite.notices().forEach(errors()::println);
      Recipe recipe = composite.recipe();
      if (canonical) {
        output().println(Canonical.recipe(recipe));
      } else {
        output().println(opened.recipe() + " is right.");
        output().println("picture " + Canonical.pictureHash(recipe));
        output().println("recipe  " + Canonical.recipeHash(recipe));
      }
    }
    return Exit.DONE;
  }
}
