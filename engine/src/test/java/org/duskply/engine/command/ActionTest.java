package org.duskply.engine.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.function.Supplier;
import org.duskply.engine.DuskplyException;
import org.duskply.engine.MemoryException;
import org.duskply.engine.UnknownNameException;
import org.duskply.engine.deliver.DeliverException;
import org.duskply.engine.frame.FrameException;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Whatever a command meets becomes sentences and a status; a stack trace only for who asks. */
class ActionTest {
  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();

  @Command(name = "failing")
  private static final class Failing extends Action {
    private final Supplier<? extends Throwable> fault;

    Failing(Streams streams, Supplier<? extends Throwable> fault) {
      super(streams);
      this.fault = fault;
    }

    @Override
    int act() {
      Throwable thrown = fault.get();
      if (thrown instanceof Error error) {
        throw error;
      }
      throw (RuntimeException) thrown;
    }
  }

  private int status(Throwable fault, String... arguments) {
    bytes.reset();
    PrintStream stream = new PrintStream(bytes, true, StandardCharsets.UTF_8);
    return new CommandLine(new Failing(Streams.of(stream, stream), () -> fault)).execute(arguments);
  }

  private String said() {
    return bytes.toString(StandardCharsets.UTF_8);
  }

  @Test
  void whatTheEngineSaysIsSaidAsItIs() {
    assertThat(status(new FrameException("a.tif ends too early."))).isEqualTo(Exit.PROBLEMS);
    assertThat(said()).isEqualTo("a.tif ends too early." + System.lineSeparator());
    assertThat(status(new UnknownNameException("no step"))).isEqualTo(Exit.USAGE);
    assertThat(status(new DeliverException("the disk is full"))).isEqualTo(Exit.FAILED);
    assertThat(status(new MemoryException(300L << 20, 100L << 20))).isEqualTo(Exit.FAILED);
    assertThat(said()).contains("at least 300 MB").contains("and 100 MB may be used");
    assertThat(status(new DuskplyException("another"))).isEqualTo(Exit.FAILED);
  }

  /** Roundings that would promise too much are not made: 1,500 bytes need 2 kB and are 1 kB. */
  @Test
  void memoryIsRoundedOnTheSafeSide() {
    assertThat(status(new MemoryException(1_500, 1_500))).isEqualTo(Exit.FAILED);
    assertThat(said()).contains("at least 2 kB").contains("and 1 kB may be used");
    long eleven = (11L << 20) + 1;
    assertThat(status(new MemoryException(eleven, eleven))).isEqualTo(Exit.FAILED);
    assertThat(said()).contains("at least 12 MB").contains("and 11 MB may be used");
  }

  @Test
  void aFullHeapIsASentence() {
    assertThat(status(new OutOfMemoryError("Java heap space"))).isEqualTo(Exit.FAILED);
    assertThat(said()).contains("-Xmx").hasLineCount(1);
  }

  @Test
  void theUnforeseenIsTwoSentencesAndATraceForWhoAsks() {
    RuntimeException fault = new IllegalStateException("first line\nsecond line");
    assertThat(status(fault)).isEqualTo(Exit.DEFECT);
    assertThat(said())
        .contains("Something unforeseen went wrong (IllegalStateException: first line).")
        .contains("--trace")
        .doesNotContain("\tat ")
        .hasLineCount(2);
    assertThat(status(fault, "--trace")).isEqualTo(Exit.DEFECT);
    assertThat(said()).contains("Please report it").contains("\tat ");
    assertThat(status(new StackOverflowError())).isEqualTo(Exit.DEFECT);
    assertThat(said()).contains("(StackOverflowError).").doesNotContain("\tat ");
    assertThat(status(new IllegalArgumentException("a bug"))).isEqualTo(Exit.DEFECT);
  }
}
