package org.duskply.engine.command;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import org.duskply.engine.Composite;
import org.duskply.engine.Delivered;
import org.duskply.engine.Engine;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code render}: makes the recipe's files. */
@Command(
    name = "render",
    mixinStandardHelpOptions = true,
    description = "Renders the recipe's deliverables.")
final class RenderCommand extends Action {
  @Mixin private Opened opened = new Opened();

  @Option(
      names = "--deliver",
      paramLabel = "NAME",
      description = "This deliverable only. May be repeated. Default: all.")
  private List<String> deliver = new ArrayList<>();

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "The folder that deliverables' paths start from. Default: the recipe's own.")
  private @Nullable Path out;

  RenderCommand(PrintStream output, PrintStream errors) {
    super(output, errors);
  }

  @Override
  int act() {
    try (Engine engine = opened.engine();
        Composite composite = engine.open(opened.recipe(), opened.view())) {
      composite.notices().forEach(errors()::println);
      render(composite).files().forEach(this::print);
    }
    return Exit.DONE;
  }

  private Delivered render(Composite composite) {
    try (ShownProgress progress = ShownProgress.on(errors())) {
      return composite.deliver(folder(), new LinkedHashSet<>(deliver), progress);
    }
  }

  private Path folder() {
    if (out != null) {
      return out;
    }
    Path parent = opened.recipe().toAbsolutePath().getParent();
    return parent == null ? opened.recipe().toAbsolutePath() : parent;
  }

  private void print(Delivered.File file) {
    output()
        .println(
            file.deliverable()
                + ": "
                + file.path()
                + ", "
                + file.width()
                + " × "
                + file.height()
                + " pixels, "
                + megabytes(file.bytes())
                + clipped(file.clipped()));
  }

  private static String megabytes(long bytes) {
    return String.format(Locale.ROOT, "%.1f MB", bytes / 1e6);
  }

  private static String clipped(double share) {
    return share == 0
        ? ""
        : String.format(
            Locale.ROOT, ", %.2f %% of them brighter or purer than the file can hold", 100 * share);
  }
}
