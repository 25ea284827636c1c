package org.duskply.benchmarks.workload;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.duskply.engine.deliver.Sink;
import org.duskply.engine.deliver.Sinks;
import org.duskply.engine.pixel.Region;

/**
 * Makes a workload: {@code MakeWorkload NAME FOLDER}. Leaves frames, the recipe ({@code
 * recipe.yaml}), and the same work as a plan for other libraries ({@code plan.tsv}, one entry a
 * line, fields parted by tabs).
 */
public final class MakeWorkload {
  private final Workload workload;
  private final Path folder;

  MakeWorkload(Workload workload, Path folder) {
    this.workload = workload;
    this.folder = folder;
  }

  /** Makes the workload that the arguments name. */
  public static void main(String[] arguments) throws IOException {
    Workload workload = arguments.length == 2 ? Workload.called(arguments[0]).orElse(null) : null;
    if (workload == null) {
      System.err.println(
          "MakeWorkload NAME FOLDER, NAME one of "
              + String.join(", ", Workload.all().stream().map(Workload::name).toList()));
      System.exit(2);
      return;
    }
    make(workload, Path.of(arguments[1]));
  }

  /**
   * Makes what of a workload is not there. Frames that another workload beside it has are linked.
   */
  public static void make(Workload workload, Path folder) throws IOException {
    new MakeWorkload(workload, folder.toAbsolutePath()).make();
  }

  private void make() throws IOException {
    Files.createDirectories(folder.resolve("frames"));
    ExecutorService pool = Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
    try {
      List<Callable<Void>> tasks = new ArrayList<>();
      for (int i = 0; i < workload.frames(); i++) {
        int frame = i;
        if (Files.exists(folder.resolve(workload.file(frame))) || linked(frame)) {
          continue;
        }
        tasks.add(
            () -> {
              frame(frame);
              return null;
            });
      }
      for (Future<Void> made : pool.invokeAll(tasks)) {
        made.get();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("Making the frames was interrupted", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("A frame could not be made", e.getCause());
    } finally {
      pool.shutdownNow();
    }
    Files.writeString(folder.resolve("recipe.yaml"), recipe(), StandardCharsets.UTF_8);
    Files.writeString(folder.resolve("plan.tsv"), plan(), StandardCharsets.UTF_8);
  }

  /** Takes a frame from another workload, if one beside this has the same. */
  private boolean linked(int frame) throws IOException {
    for (Workload other : Workload.all()) {
      Path made = folder.resolveSibling(other.name()).resolve(other.file(frame));
      if (workload.shares(frame, other) && Files.exists(made)) {
        link(folder.resolve(workload.file(frame)), made);
        return true;
      }
    }
    return false;
  }

  private static void link(Path link, Path made) throws IOException {
    try {
      Files.createLink(link, made);
    } catch (IOException | UnsupportedOperationException e) { // some file systems have no links
      Files.copy(made, link);
    }
  }

  private void frame(int number) {
    Path file = folder.resolve(workload.file(number));
    int width = workload.width();
    int height = workload.height();
    Scenery scenery = new Scenery(workload);
    try (Sink sink =
        Sinks.open(
            PictureFile.spec(
                file,
                workload.format(),
                workload.compress(),
                workload.deflateLevel(),
                width,
                height))) {
      Region whole = Region.ofSize(width, height);
      for (int band = 0; band < sink.bands(); band++) {
        int top = band * PictureFile.BAND_ROWS;
        Region rows = whole.rows(top, top + PictureFile.BAND_ROWS);
        sink.append(band, sink.encode(band, scenery.rows(number, rows)));
      }
      sink.commit();
    }
  }

  /** The work as a recipe. */
  String recipe() {
    StringBuilder text = new StringBuilder();
    text.append("duskply: 1\nbase: f0\nworking: srgb\nframes:\n");
    for (int i = 0; i < workload.frames(); i++) {
      text.append("  f").append(i).append(": ").append(workload.file(i)).append('\n');
    }
    text.append("steps:\n");
    for (Workload.Layer layer : workload.layers()) {
      text.append(
          String.format(
              Locale.ROOT,
              "  - { %s: f%d, opacity: %s, mask: { polygon: \"%s\", feather: %s } }%n",
              layer.lighten() ? "pop" : "lay",
              layer.frame(),
              layer.opacity(),
              points(layer),
              2 * layer.sigma()));
    }
    text.append("  - { adjust: [ { power: ").append(Workload.POWER).append(" } ] }\n");
    return text.append("deliverables: { out: { file: out.tif, depth: 16, profile: srgb } }\n")
        .toString();
  }

  /** The work as a plan. */
  String plan() {
    StringBuilder text = new StringBuilder();
    text.append("size\t").append(workload.width()).append('\t').append(workload.height());
    text.append("\nbase\t").append(workload.file(0)).append('\n');
    for (Workload.Layer layer : workload.layers()) {
      text.append(
          String.format(
              Locale.ROOT,
              "layer\t%s\t%s\t%s\t%s\t%s%n",
              workload.file(layer.frame()),
              layer.lighten() ? "lighten" : "normal",
              layer.opacity(),
              layer.sigma(),
              points(layer)));
    }
    return text.append("power\t").append(Workload.POWER).append("\nout\tpeer.tif\n").toString();
  }

  private String points(Workload.Layer layer) {
    return String.join(" ", workload.mask(layer).stream().map(c -> c[0] + "," + c[1]).toList());
  }
}
