package org.duskply.engine.command;

import org.duskply.engine.View;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Which part of the picture, and how large. */
final class ViewOptions {
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
      names = "--alternate",
      paramLabel = "NAME",
      description =
          "This alternate alone; main is the recipe as it stands. Default: render makes all that"
              + " the deliverables name.")
  private @Nullable String alternate;

  View view() {
    return new View(reduction, only, skip, until, alternate);
  }
}
