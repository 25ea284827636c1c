package org.duskply.engine.command;

import java.io.Console;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Tells whether someone watches. */
final class Terminals {
  private Terminals() {}

  /** Whether the error stream is a terminal, as far as Java can tell. */
  static boolean errorsAreShown() {
    return consoleIsTerminal() && !errorsAreRedirected();
  }

  /** From JDK 22 on a console may be there without a terminal behind it, and says so itself. */
  @SuppressWarnings("SystemConsoleNull")
  private static boolean consoleIsTerminal() {
    Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException e) {
      return true; // before JDK 22 a console is a terminal
    }
  }

  /** A console speaks for input and output; where errors go, only some systems can be asked. */
  private static boolean errorsAreRedirected() {
    try {
      Path target = Files.readSymbolicLink(Path.of("/proc/self/fd/2"));
      return !target.startsWith("/dev") || target.endsWith("null");
    } catch (IOException | RuntimeException e) {
      return false;
    }
  }
}
