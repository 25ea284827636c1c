package org.duskply.engine.command;

import org.duskply.engine.Engine;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How the work is done; neither changes a bit of the picture. */
final class WorkOptions {
  @Option(
      names = "--threads",
      paramLabel = "N",
      converter = Threads.class,
      description =
          "How many threads work. Default: one a processor. It changes no bit of the picture.")
  private @Nullable Integer threads;

  @Option(
      names = "--memory",
      paramLabel = "SIZE",
      converter = MemorySize.class,
      description =
          "Working memory, such as 800m or 2g. Default: 65 %% of Java's heap. It changes no bit"
              + " of the picture.")
  private @Nullable Long memory;

  Engine build(Engine.Builder builder) {
    if (threads != null) {
      builder.threads(threads);
    }
    if (memory != null) {
      builder.memory(memory);
    }
    return builder.build();
  }
}
