package org.duskply.benchmarks.sidebyside;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Where and of what a measurement was made. */
final class Machine {
  private static final double GIGABYTE = 1e9;

  private Machine() {}

  /**
   * One sentence a line.
   *
   * @param root the repository's folder
   */
  static List<String> lines(Path root) {
    List<String> lines = new ArrayList<>();
    lines.add("Date: " + LocalDate.now(ZoneOffset.UTC));
    lines.add("Commit: " + commit(root));
    lines.add(
        String.format(
            Locale.ROOT,
            "Processor: %s, %d cores",
            field(Path.of("/proc/cpuinfo"), "model name", ":"),
            Runtime.getRuntime().availableProcessors()));
    lines.add(String.format(Locale.ROOT, "Memory: %.1f GB", memory() / GIGABYTE));
    lines.add(
        "System: "
            + field(Path.of("/etc/os-release"), "PRETTY_NAME", "=").replace("\"", "")
            + ", "
            + System.getProperty("os.name")
            + " "
            + System.getProperty("os.version"));
    lines.add("Java: " + System.getProperty("java.vm.name") + " " + Runtime.version());
    return lines;
  }

  private static String commit(Path root) {
    String git = root.toString();
    String commit = Processes.answer("git", "-C", git, "rev-parse", "--short=12", "HEAD");
    String changed =
        Processes.answer(
            "git", "-C", git, "status", "--porcelain", "--", ".", ":!benchmarks/RESULTS.md");
    return (commit.isEmpty() ? "unknown" : commit)
        + (changed.isEmpty() ? "" : ", with changes that are not committed");
  }

  private static long memory() {
    return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getTotalMemorySize();
  }

  /** What follows the first {@code name} and {@code sign} of a file. */
  private static String field(Path file, String name, String sign) {
    try {
      return Files.readAllLines(file).stream()
          .filter(line -> line.startsWith(name) && line.contains(sign))
          .findFirst()
          .map(line -> line.substring(line.indexOf(sign) + 1).strip())
          .orElse("unknown");
    } catch (IOException e) {
      return "unknown";
    }
  }
}
