package org.duskply.engine.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.duskply.engine.CancelledException;
import org.duskply.engine.Composite;
import org.duskply.engine.Delivered;
import org.duskply.engine.Engine;
import org.duskply.recipe.Alternate;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code render}: makes the recipe's files. */
@Command(
    name = "render",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = "Renders the recipe's deliverables.")
final class RenderCommand extends Action {
  @Option(
      names = "--deliver",
      paramLabel = "NAME",
      description = "This deliverable only. May be repeated. Default: all.")
  private List<String> deliver = new ArrayList<>();

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description =
          "The folder that deliverables' paths start from; made if it is not there. Default: the"
              + " recipe's own.")
  private @Nullable Path out;

  @Option(
      names = "--before",
      description =
          "Render the frame that the recipe compares with instead, as the same deliverables, into"
              + " files whose names end in -before.")
  private boolean before;

  @Option(
      names = "--deflate-level",
      paramLabel = "1-9",
      converter = DeflateLevel.class,
      description =
          "How hard deflated TIFFs are packed: 1 is quick, 9 slow. It changes no pixel. Default:"
              + " the quickest way that makes the file about as small as any.")
  private @Nullable Integer deflateLevel;

  @Mixin private ViewOptions view = new ViewOptions();
  @Mixin private RecipeOptions recipe = new RecipeOptions();
  @Mixin private WorkOptions work = new WorkOptions();

  RenderCommand(Streams streams) {
    super(streams);
  }

  @Override
  int act() {
    try (Interruption interruption = Interruption.watch();
        Engine engine = work.build(builder());
        Composite composite = engine.open(recipe.recipe(), view.view())) {
      notices(composite.notices());
      try {
        Delivered delivered = render(composite, interruption);
        delivered.notices().forEach(errors()::println);
        delivered.files().forEach(this::print);
        return Exit.DONE;
      } catch (CancelledException e) { // told here, while the interruption waits for it
        errors().println(e.getMessage());
        return Exit.CANCELLED;
      }
    }
  }

  private Engine.Builder builder() {
    Engine.Builder builder = recipe.engine();
    return deflateLevel == null ? builder : builder.deflateLevel(deflateLevel);
  }

  private Delivered render(Composite composite, Interruption interruption) {
    Path folder = out == null ? recipe.folder() : out;
    try (ShownProgress progress = new ShownProgress(errors(), terminal(), interruption)) {
      Set<String> names = new LinkedHashSet<>(deliver);
      return before
          ? composite.deliverBefore(folder, names, progress)
          : composite.deliver(folder, names, progress);
    }
  }

  private void print(Delivered.File file) {
    output()
        .println(
            String.format(
                Locale.ROOT,
                "%s: %s, %d × %d pixels, %s%s",
                name(file),
                file.path(),
                file.width(),
                file.height(),
                size(file.bytes()),
                clipped(file.clipped())));
  }

  private static String name(Delivered.File file) {
    return file.alternate().equals(Alternate.MAIN)
        ? file.deliverable()
        : file.deliverable() + " (" + file.alternate() + ")";
  }

  /** A file's size, in the thousands that folders are listed in. */
  static String size(long bytes) {
    return bytes < 1_000_000
        ? String.format(Locale.ROOT, "%.1f kB", bytes / 1e3)
        : String.format(Locale.ROOT, "%.1f MB", bytes / 1e6);
  }

  /** The share of pixels that a file could not hold, in words; nothing where it is 0. */
  static String clipped(double share) {
    if (share == 0) {
      return "";
    }
    double percent = 100 * share;
    String number =
        percent < 0.01 ? "less than 0.01 %" : String.format(Locale.ROOT, "%.2f %%", percent);
    return ", " + number + " of them brighter or purer than the file can hold";
  }
}
