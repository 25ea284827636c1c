package org.duskply.engine.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.Engine;
import org.duskply.engine.View;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What commands that open a recipe with its frames have in common. */
final class Opened {
  @Parameters(paramLabel = "RECIPE", description = "The recipe's file.")
  private Path recipe = Path.of("");

  @Option(
      names = "--scale",
      paramLabel = "1/n",
      converter = Scale.class,
      description =
          "A preview: n pixels of the frames become one across and down. Default: full size.")
  private int reduction = 1;

  @Option(
      names = "--only",
      paramLabel = "STEP",
      description =
          "This step alone over the base. Steps go by id, frame or place, as explain prints them.")
  private @Nullable String only;

  @Option(names = "--skip", paramLabel = "STEP", description = "Leave this step out.")
  private @Nullable String skip;

  @Option(names = "--until", paramLabel = "STEP", description = "Stop after this step.")
  private @Nullable String until;

  @Option(
      names = "--allow",
      paramLabel = "DIR",
      description =
          "A folder beside the recipe's own that frames may be read from. May be repeated.")
  private List<Path> allowed = new ArrayList<>();

  @Option(
      names = "--threads",
      paramLabel = "N",
      description =
          "How many threads work. Default: one a processor. It changes no bit of the picture.")
  private int threads;

  @Option(
      names = "--memory",
      paramLabel = "SIZE",
      converter = MemorySize.class,
      description =
          "Working memory, such as 800m or 2g. Default: 65 %% of Java's heap. It changes no bit.")
  private @Nullable Long memory;

  Path recipe() {
    return recipe;
  }

  View view() {
    return new View(reduction, only, skip, until);
  }

  Engine engine() {
    Engine.Builder builder = Engine.builder();
    allowed.forEach(builder::allow);
    if (threads != 0) {
      builder.threads(threads);
    }
    if (memory != null) {
      builder.memory(memory);
    }
    return builder.build();
  }
}
