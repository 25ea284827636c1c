package org.duskply.engine.command;

import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * Where a command's words go.
 *
 * @param output results
 * @param errors notices, progress and problems
 * @param machine results that other programs read, as UTF-8 whatever the terminal's charset
 * @param terminal whether {@code errors} is a terminal, on which a bar can be drawn
 */
record Streams(PrintWriter output, PrintWriter errors, PrintStream machine, boolean terminal) {
  /** Both in UTF-8 and neither a terminal. */
  static Streams of(PrintStream out, PrintStream err) {
    return of(out, StandardCharsets.UTF_8, err, StandardCharsets.UTF_8, false);
  }

  static Streams of(
      PrintStream out, Charset outCharset, PrintStream err, Charset errCharset, boolean terminal) {
    return new Streams(writer(out, outCharset), writer(err, errCharset), out, terminal);
  }

  /** Those of the program itself, each in the charset that its reader expects. */
  static Streams ofProgram() {
    return of(
        System.out, charset("stdout"), System.err, charset("stderr"), Terminals.errorsAreShown());
  }

  private static PrintWriter writer(PrintStream stream, Charset charset) {
    return new PrintWriter(
        new PlainLetters(new OutputStreamWriter(stream, charset), charset), true);
  }

  /**
   * The charset of a standard stream. Its name stands in a property that older and newer JDKs call
   * differently; without one it is that of the system.
   */
  private static Charset charset(String stream) {
    for (String property :
        new String[] {stream + ".encoding", "sun." + stream + ".encoding", "native.encoding"}) {
      String name = System.getProperty(property);
      if (name != null && Charset.isSupported(name)) {
        return Charset.forName(name);
      }
    }
    return Charset.defaultCharset();
  }
}
