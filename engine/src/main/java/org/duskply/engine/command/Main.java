package org.duskply.engine.command;

import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;

/** The command line. Exit statuses: see {@link Exit}. */
@Command(
    name = "duskply",
    mixinStandardHelpOptions = true,
    versionProvider = Main.Version.class,
    description = "Renders twilight composites from text recipes.",
    exitCodeListHeading = "%nExit status:%n",
    exitCodeList = {
      "0:done",
      "1:the recipe or its frames have problems, all of them named",
      "2:the command was not written rightly",
      "3:the picture could not be made or written",
      "70:something unforeseen; --trace shows where",
      "130:given up from outside"
    })
public final class Main {
  private Main() {}

  /** Runs the command line and ends the program with its status. */
  public static void main(String[] arguments) {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    System.exit(run(out, System.err, arguments));
  }

  /** Runs a command. */
  static int run(PrintStream out, PrintStream err, String... arguments) {
    CommandLine line =
        new CommandLine(new Main())
            .addSubcommand(new RenderCommand(out, err))
            .addSubcommand(new CheckCommand(out, err))
            .addSubcommand(new ExplainCommand(out, err))
            .addSubcommand(new SchemaCommand(out, err))
            .setOut(writer(out))
            .setErr(writer(err))
            .setUsageHelpWidth(100);
    if (arguments.length == 0) {
      line.usage(out);
      return Exit.USAGE;
    }
    return line.execute(arguments);
  }

  private static PrintWriter writer(PrintStream stream) {
    return new PrintWriter(
        new OutputStreamWriter(
            stream, stream == System.err ? Charset.defaultCharset() : StandardCharsets.UTF_8),
        true);
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
