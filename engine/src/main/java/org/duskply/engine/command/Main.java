package org.duskply.engine.command;

import java.io.PrintStream;
import java.nio.file.Path;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;

/** The command line. Exit statuses: see {@link Exit}. */
@Command(
    name = "duskply",
    mixinStandardHelpOptions = true,
    versionProvider = Main.Version.class,
    description = "Renders twilight composites from text recipes.",
    footer = {
      "",
      "`duskply COMMAND --help` tells more of a command. Words that are results go to standard"
          + " output; notices, progress and problems go to standard error."
    },
    exitCodeListHeading = "%nExit status:%n",
    exitCodeList = {
      "0:done",
      "1:the recipe or its frames have problems, which were named",
      "2:the command was not written rightly, or names a step or deliverable that is not there",
      "3:the picture could not be made or written: memory, disk, folder",
      "70:something unforeseen; --trace shows where",
      "130:given up from outside; no file has been changed"
    })
public final class Main {
  private static final int HELP_WIDTH = 100;

  private Main() {}

  /** Runs the command line and ends the program with its status. */
  public static void main(String[] arguments) {
    System.exit(run(Streams.ofProgram(), arguments));
  }

  /** Runs a command on streams of UTF-8. */
  static int run(PrintStream out, PrintStream err, String... arguments) {
    return run(Streams.of(out, err), arguments);
  }

  static int run(Streams streams, String... arguments) {
    CommandLine line = commands(streams);
    if (arguments.length == 0) {
      line.usage(streams.errors());
      return Exit.USAGE;
    }
    return line.execute(arguments);
  }

  /** All commands with what they read, write and say. */
  static CommandLine commands(Streams streams) {
    return new CommandLine(new Main())
        .addSubcommand(new RenderCommand(streams))
        .addSubcommand(new CheckCommand(streams))
        .addSubcommand(new ExplainCommand(streams))
        .addSubcommand(new SchemaCommand(streams))
        .registerConverter(Path.class, new FilePath())
        .setExpandAtFiles(false) // a recipe's name may begin with @
        .setParameterExceptionHandler(new WrongUse())
        .setOut(streams.output())
        .setErr(streams.errors())
        .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
        .setUsageHelpWidth(HELP_WIDTH);
  }

  /** The version in the jar's manifest. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      String version = Main.class.getPackage().getImplementationVersion();
      return new String[] {"duskply " + (version == null ? "(from its sources)" : version)};
    }
  }
}
