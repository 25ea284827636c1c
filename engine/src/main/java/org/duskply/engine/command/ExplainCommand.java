package org.duskply.engine.command;

import org.duskply.engine.Composite;
import org.duskply.engine.Engine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code explain}: tells the recipe step by step. */
@Command(
    name = "explain",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = "Tells what each step does, in words and numbers, and what rendering will take.")
final class ExplainCommand extends Action {
  @Mixin private ViewOptions view = new ViewOptions();
  @Mixin private RecipeOptions recipe = new RecipeOptions();
  @Mixin private WorkOptions work = new WorkOptions();

  ExplainCommand(Streams streams) {
    super(streams);
  }

  @Override
  int act() {
    try (Engine engine = work.build(recipe.engine());
        Composite composite = engine.open(recipe.recipe(), view.view())) {
      output().print(ExplanationText.of(composite, composite.explain()));
      output().flush();
      notices(composite.notices());
    }
    return Exit.DONE;
  }
}
