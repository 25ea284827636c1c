package org.duskply.benchmarks.kernels;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.CommandLineOptionException;
import org.openjdk.jmh.runner.options.CommandLineOptions;

/**
 * Measures kernels and prints what they reach as tables in Markdown, one for each kind.
 *
 * <p>From the top of the checkout, all of them, all of them for keeping, or those whose names match
 * an expression, which options of JMH may follow:
 *
 * <pre>
 * mvn -B -ntp -Pmeasure -DskipTests -pl benchmarks -am package
 * mvn -B -ntp -Pmeasure -DskipTests -pl benchmarks -am package -Drecord=KERNELS.md
 * mvn -B -ntp -Pmeasure -DskipTests -pl benchmarks -am package -Dmeasure=Moving
 * mvn -B -ntp -Pmeasure -DskipTests -pl benchmarks -am package "-Dmeasure=Blending -p mode=SCREEN,HUE -p content=NOISE"
 * </pre>
 *
 * <p>What is to be kept, of all or of some, goes to a file in {@code benchmarks} too, as a {@link
 * KernelPage}. Figures are worth comparing on one quiet machine only.
 */
public final class KernelTable {
  private static final String RECORD = "duskply.record";
  private static final String HEAD_OF_MOVING =
      "| kernel | pixels | Mpx/s | GB/s | GB/s of the triad | share |\n"
          + "| --- | ---: | ---: | ---: | ---: | ---: |\n";

  private KernelTable() {}

  /** Runs what JMH's own options ask for. */
  public static void main(String[] args)
      throws RunnerException, CommandLineOptionException, IOException {
    String machine = Machine.sentence();
    String tables = of(new Runner(new CommandLineOptions(args)).run());
    System.out.println();
    System.out.print(machine + "\n\n" + tables);
    String record = System.getProperty(RECORD, "");
    if (!record.isEmpty()) {
      Files.writeString(Path.of(record), KernelPage.of(machine, tables));
    }
  }

  /** The tables of results. */
  static String of(Collection<RunResult> results) {
    Map<String, List<RunResult>> kinds = new LinkedHashMap<>();
    for (RunResult result : results) {
      String type = result.getParams().getBenchmark().replaceAll("\\.[^.]*$", "");
      kinds
          .computeIfAbsent(type.substring(type.lastIndexOf('.') + 1), k -> new ArrayList<>())
          .add(result);
    }
    StringBuilder text = new StringBuilder();
    kinds.forEach(
        (kind, rows) -> {
          text.append("### ").append(kind).append("\n\n");
          text.append(kind.equals("Moving") ? moving(rows) : plain(rows)).append('\n');
        });
    return text.toString();
  }

  private static String plain(List<RunResult> rows) {
    String unit = rows.get(0).getPrimaryResult().getScoreUnit();
    boolean nanos = unit.equals("ns/op");
    StringBuilder text = new StringBuilder();
    text.append("| | ").append(nanos ? "ns a sample" : "Mpx/s").append(" | ± |\n");
    text.append("| --- | ---: | ---: |\n");
    for (RunResult row : rows) {
      Result<?> result = row.getPrimaryResult();
      double spread = result.getStatistics().getStandardDeviation() / result.getScore();
      text.append(
          String.format(
              Locale.ROOT,
              "| %s | %s | %.0f %% |%n",
              name(row.getParams()),
              threeDigits(result.getScore()),
              100 * (Double.isNaN(spread) ? 0 : spread)));
    }
    return text.toString();
  }

  /** What was timed by turns, each by itself. */
  private static String moving(List<RunResult> rows) {
    StringBuilder text = new StringBuilder(HEAD_OF_MOVING);
    for (RunResult row : rows) {
      Mover kernel = Mover.valueOf(row.getParams().getParam("kernel"));
      double pixels = count(row, "movedPixels");
      double moved = kernel.bytes() * pixels / count(row, "kernelNanos");
      double triad = Moving.TRIAD_BYTES * pixels / count(row, "triadNanos");
      text.append(
          String.format(
              Locale.ROOT,
              "| %s | %s | %s | %.1f | %.1f | %.2f |%n",
              words(kernel.name()),
              row.getParams().getParam("pixels"),
              threeDigits(1000 * pixels / count(row, "kernelNanos")),
              moved,
              triad,
              moved / triad));
    }
    return text.toString();
  }

  private static double count(RunResult row, String counter) {
    Result<?> result = row.getSecondaryResults().get(counter);
    if (result == null) {
      throw new IllegalStateException(counter + " was not counted");
    }
    return result.getScore();
  }

  /** The parameters, but for a view, which is what is meant where nothing is said. */
  private static String name(BenchmarkParams params) {
    List<String> words = new ArrayList<>();
    for (String key : params.getParamsKeys()) {
      if (!params.getParam(key).equals(Content.VIEW.name())) {
        words.add(words(params.getParam(key)));
      }
    }
    if (words.isEmpty() || params.getParamsKeys().stream().allMatch("content"::equals)) {
      String benchmark = params.getBenchmark();
      String method = benchmark.substring(benchmark.lastIndexOf('.') + 1);
      words.add(0, words(method.replaceAll("(?=[A-Z])", "_")));
    }
    return String.join(", ", words);
  }

  private static String words(String constant) {
    return constant.replace('_', ' ').toLowerCase(Locale.ROOT);
  }

  private static String threeDigits(double v) {
    int digits = v >= 100 ? 0 : v >= 10 ? 1 : 2;
    return String.format(Locale.ROOT, "%." + digits + "f", v);
  }
}
