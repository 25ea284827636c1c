package org.duskply.benchmarks.kernels;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** What figures were measured on, and of which state of the source. */
final class Machine {
  private static final Path PROCESSORS = Path.of("/proc/cpuinfo");

  private Machine() {}

  /** One sentence for people. */
  static String sentence() {
    return "Measured at commit %s on %s, %d processors, Java %s (%s), one thread."
        .formatted(
            commit(),
            processor(),
            Runtime.getRuntime().availableProcessors(),
            System.getProperty("java.version"),
            System.getProperty("java.vm.name"));
  }

  private static String processor() {
    try {
      for (String line : Files.readAllLines(PROCESSORS)) {
        if (line.startsWith("model name")) {
          return line.substring(line.indexOf(':') + 1).strip();
        }
      }
    } catch (IOException e) {
      // Only some systems tell.
    }
    return System.getProperty("os.name") + " " + System.getProperty("os.arch");
  }

  private static String commit() {
    try {
      Process git = new ProcessBuilder("git", "describe", "--always", "--dirty").start();
      try (InputStream out = git.getInputStream()) {
        String commit = new String(out.readAllBytes(), StandardCharsets.UTF_8).strip();
        return commit.isEmpty() ? "unknown" : commit;
      }
    } catch (IOException e) {
      return "unknown";
    }
  }
}
