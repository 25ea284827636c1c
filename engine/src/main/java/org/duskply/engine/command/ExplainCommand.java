package org.duskply.engine.command;

import java.io.PrintStream;
import org.duskply.engine.Composite;
import org.duskply.engine.Engine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code explain}: tells the recipe step by step. */
@Command(
    name = "explain",
    mixinStandardHelpOptions = true,
    description = "Tells what each step does, in words and numbers, and what rendering will take.")
final class ExplainCommand extends Action {
  @Mixin private Opened opened = new Opened();

  ExplainCommand(PrintStream output, PrintStream errors) {
    super(output, errors);
  }

  @Override
  int act() {
    try (Engine engine = opened.engine();
        Composite composite = engine.open(opened.recipe(), opened.view())) {
      output().print(ExplanationText.of(composite, composite.explain()));
      composite.notices().forEach(errors()::println);
    }
    return Exit.DONE;
  }
}
