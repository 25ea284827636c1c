package org.duskply.examples.boathouse;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Makes the demo's frames: {@code MakeFrames [--size WxH] [--out DIR] [--threads N]}. */
@Command(
    name = "make-frames",
    mixinStandardHelpOptions = true,
    description = "Renders the boathouse scene and writes the evening's frames.")
public final class MakeFrames implements Callable<Integer> {
  /** Changes whenever the same size would give other pixels. */
  private static final String EDITION = "boathouse 3";

  private static final int LEAST = 24;
  private static final int MOST = 12_000;

  @Spec private @Nullable CommandSpec spec;

  @Option(names = "--size", defaultValue = "2400x1600", description = "Width x height in pixels.")
  private String size = "2400x1600";

  @Option(names = "--out", defaultValue = "examples/boathouse/frames", description = "The folder.")
  private Path out = Path.of("examples", "boathouse", "frames");

  @Option(names = "--threads", defaultValue = "0", description = "0: one a processor.")
  private int threads;

  public static void main(String[] arguments) {
    System.exit(new CommandLine(new MakeFrames()).execute(arguments));
  }

  @Override
  public Integer call() throws IOException {
    CommandLine line = Objects.requireNonNull(spec).commandLine();
    PrintWriter words = line.getOut();
    int[] wanted = parse(size);
    if (wanted.length == 0) {
      line.getErr()
          .printf(
              "--size is %s; it should be WIDTHxHEIGHT, each %d to %d, such as 2400x1600.%n",
              size, LEAST, MOST);
      return 2;
    }
    int workers = threads > 0 ? threads : Runtime.getRuntime().availableProcessors();
    String print = EDITION + " " + wanted[0] + "x" + wanted[1] + " " + Sensor.PROFILE.key();
    Path mark = out.resolve("made-by.txt");
    if (made(mark, print)) {
      words.printf("%s holds these frames already; nothing to do.%n", out);
      return 0;
    }
    Files.createDirectories(out);
    Files.deleteIfExists(mark);
    words.printf("Building the scene, then %d rows of %d pixels.%n", wanted[1], wanted[0]);
    new FrameWriter(out, wanted[0], wanted[1], workers).write(words::println);
    Files.writeString(mark, print + "\n", StandardCharsets.UTF_8);
    words.printf("%d frames are in %s.%n", Evening.shots().size(), out);
    return 0;
  }

  private boolean made(Path mark, String print) throws IOException {
    if (!Files.exists(mark) || !Files.readString(mark).strip().equals(print)) {
      return false;
    }
    List<Shot> shots = Evening.shots();
    return shots.stream().allMatch(shot -> Files.exists(out.resolve(shot.file())));
  }

  private static int[] parse(String size) {
    if (!size.matches("\\d{1,5}x\\d{1,5}")) {
      return new int[0];
    }
    int cross = size.indexOf('x');
    int width = Integer.parseInt(size.substring(0, cross));
    int height = Integer.parseInt(size.substring(cross + 1));
    boolean fits = Math.min(width, height) >= LEAST && Math.max(width, height) <= MOST;
    return fits ? new int[] {width, height} : new int[0];
  }
}
