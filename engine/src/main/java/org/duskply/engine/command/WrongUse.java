package org.duskply.engine.command;

import java.io.PrintWriter;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says what is not right in a command, what was perhaps meant, and where help is. */
final class WrongUse implements IParameterExceptionHandler {
  @Override
  public int handleParseException(ParameterException e, String[] arguments) {
    CommandLine line = e.getCommandLine();
    String command = line.getCommandSpec().qualifiedName();
    PrintWriter errors = line.getErr();
    if (e instanceof UnmatchedArgumentException unmatched) {
      errors.println(sentence(unmatched, command, line));
    } else {
      errors.println(e.getMessage());
    }
    errors.println("`" + command + " --help` says what can be written.");
    return Exit.USAGE;
  }

  private static String sentence(UnmatchedArgumentException e, String command, CommandLine line) {
    String word = e.getUnmatched().isEmpty() ? "" : e.getUnmatched().get(0);
    if (!e.isUnknownOption() && line.getParent() != null) {
      return "`" + word + "` is one word too many for `" + command + "`.";
    }
    String kind = e.isUnknownOption() ? "option" : "command";
    List<String> near = e.getSuggestions();
    String meant = near.isEmpty() ? "." : "; did you mean `" + last(near.get(0)) + "`?";
    return "`" + command + "` has no " + kind + " `" + word + "`" + meant;
  }

  /** The last word: suggestions of commands come with the program's name before them. */
  private static String last(String words) {
    return words.substring(words.lastIndexOf(' ') + 1);
  }
}
