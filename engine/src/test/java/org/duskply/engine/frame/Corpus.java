package org.duskply.engine.frame;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/**
 * A folder of pictures from many sources that is not part of the project: {@code
 * -Dduskply.corpus=FOLDER}, or {@code shared/corpus} beside the project. Tests that need it are
 * skipped aloud where it is not there.
 */
public final class Corpus {
  private static final Path ROOT = root();

  private Corpus() {}

  private static Path root() {
    String given = System.getProperty("duskply.corpus");
    if (given != null) {
      return Path.of(given);
    }
    Path up = Path.of(System.getProperty("user.dir")).toAbsolutePath();
    for (int i = 0; i < 5 && up != null; i++, up = up.getParent()) {
      Path there = up.resolve("shared/corpus");
      if (Files.isDirectory(there)) {
        return there;
      }
    }
    return Path.of("shared/corpus");
  }

  /** A file; skips the test if the corpus is not there. */
  public static Path file(String name) {
    need();
    return ROOT.resolve(name);
  }

  /** All files below a folder, by name; skips the test if the corpus is not there. */
  static List<Path> below(String folder) {
    need();
    try (Stream<Path> all = Files.walk(ROOT.resolve(folder))) {
      return all.filter(Files::isRegularFile).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void need() {
    boolean there = Files.isDirectory(ROOT);
    if (!there) {
      System.err.println("SKIPPED: no corpus of pictures at " + ROOT + " (-Dduskply.corpus)");
    }
    Assumptions.assumeTrue(there, "no corpus of pictures");
  }
}
