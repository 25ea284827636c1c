package org.duskply.engine.command;

import java.io.PrintStream;
import java.util.concurrent.Callable;
import org.duskply.engine.CancelledException;
import org.duskply.engine.DuskplyException;
import org.duskply.recipe.RecipeException;
import picocli.CommandLine.Option;

/** A command: does its work, and turns what goes wrong into sentences and an exit status. */
abstract class Action implements Callable<Integer> {
  private final PrintStream output;
  private final PrintStream errors;

  @Option(
      names = "--trace",
      description = "Print where in the program an unforeseen error happened, for a report.")
  private boolean trace;

  Action(PrintStream output, PrintStream errors) {
    this.output = output;
    this.errors = errors;
  }

  /** The work. */
  abstract int act();

  /** Where results go. */
  final PrintStream output() {
    return output;
  }

  /** Where notices, progress and problems go. */
  final PrintStream errors() {
    return errors;
  }

  @Override
  public final Integer call() {
    try {
      return act();
    } catch (RecipeException e) {
      e.problems().forEach(errors::println);
      long count = e.problems().stream().filter(p -> !p.isNotice()).count();
      errors.println(count == 1 ? "1 problem." : count + " problems.");
      return Exit.PROBLEMS;
    } catch (CancelledException e) {
      errors.println(e.getMessage());
      return Exit.CANCELLED;
    } catch (DuskplyException e) {
      errors.println(e.getMessage());
      return Exit.FAILED;
    } catch (IllegalArgumentException e) {
      errors.println(e.getMessage());
      return Exit.USAGE;
    } catch (RuntimeException e) {
      errors.println(
          "Something unforeseen went wrong ("
              + e
              + "). No file has been changed. Run it again with --trace and report what it prints.");
      if (trace) {
        e.printStackTrace(errors);
      }
      return Exit.DEFECT;
    }
  }
}
