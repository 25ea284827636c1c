package org.duskply.engine.command;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.util.concurrent.Callable;
import org.duskply.engine.DuskplyException;
import org.duskply.engine.UnknownNameException;
import org.duskply.engine.frame.FrameException;
import org.duskply.recipe.Problem;
import org.duskply.recipe.RecipeException;
import picocli.CommandLine.Option;

/** A command: does its work, and turns what goes wrong into sentences and an exit status. */
abstract class Action implements Callable<Integer> {
  private final Streams streams;

  @Option(
      names = "--trace",
      description = "Print where in the program an unforeseen error happened, for a report.")
  private boolean trace;

  Action(Streams streams) {
    this.streams = streams;
  }

  /** The work; returns the exit status. */
  abstract int act();

  /** Where results go. */
  final PrintWriter output() {
    return streams.output();
  }

  /** Where results go that other programs read. */
  final PrintStream machine() {
    return streams.machine();
  }

  /** Where notices, progress and problems go. */
  final PrintWriter errors() {
    return streams.errors();
  }

  /** Whether a bar can be drawn on {@link #errors}. */
  final boolean terminal() {
    return streams.terminal();
  }

  @Override
  public final Integer call() {
    try {
      return act();
    } catch (RecipeException e) {
      e.problems().forEach(errors()::println);
      long count = e.problems().stream().filter(p -> !p.isNotice()).count();
      errors().println(count == 1 ? "1 problem." : count + " problems.");
      return Exit.PROBLEMS;
    } catch (FrameException e) {
      return told(e, Exit.PROBLEMS);
    } catch (UnknownNameException e) {
      return told(e, Exit.USAGE);
    } catch (DuskplyException e) {
      return told(e, Exit.FAILED);
    } catch (OutOfMemoryError e) {
      errors().println("Java's heap is full. Give it more with -Xmx; no file has been changed.");
      return Exit.FAILED;
    } catch (RuntimeException | Error e) {
      return unforeseen(e);
    }
  }

  /** Prints things worth a look. */
  final void notices(Iterable<Problem> notices) {
    notices.forEach(errors()::println);
  }

  private int told(DuskplyException e, int status) {
    errors().println(e.getMessage());
    return status;
  }

  private int unforeseen(Throwable e) {
    String name = e.getClass().getSimpleName();
    String what = e.getMessage() == null ? name : name + ": " + e.getMessage();
    errors()
        .println("Something unforeseen went wrong (" + what.lines().findFirst().orElse("") + ").");
    if (trace) {
      errors().println("Please report it with these lines:");
      e.printStackTrace(errors());
    } else {
      errors().println("Please run it again with --trace, and report what it prints.");
    }
    return Exit.DEFECT;
  }
}
