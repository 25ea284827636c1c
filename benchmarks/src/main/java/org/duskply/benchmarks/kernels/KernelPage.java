package org.duskply.benchmarks.kernels;

/** The page that keeps the last measurement of all kernels. */
final class KernelPage {
  private static final String PAGE =
      """
      # Kernels

      Each loop over pixels by itself, one thread, by JMH: `KernelTable` wrote this. What a table times is said by the class of its name
      in [`kernels`](src/main/java/org/duskply/benchmarks/kernels). Each answer is compared with its formula in plain double before it
      is timed; ± is the standard deviation of the rounds. Under Moving, the share is that of the bandwidth of a triad `a = b + s·c`
      timed by turns in the same process, counting the bytes alone that the kernel must move: at 16,777,216 pixels memory is the bound,
      at 512 the core.

      %s

      %s
      ## Again

          mvn -B -ntp -Dquick -Pmeasure -DskipTests -pl benchmarks -am package -Drecord=KERNELS.md

      takes a quarter of an hour on a machine that should do nothing else. `-Dmeasure=Blending` measures some alone,
      and with `-Drecord` makes a page of those.
      """;

  private KernelPage() {}

  /**
   * The page, in Markdown.
   *
   * @param machine the sentence of where and of what it was measured
   * @param tables one of each kind, below headings
   */
  static String of(String machine, String tables) {
    return PAGE.formatted(machine, tables.strip().replace("### ", "## ") + "\n");
  }
}
