package org.duskply.benchmarks.sidebyside;

import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.duskply.benchmarks.workload.PictureFile;
import org.duskply.engine.Composite;
import org.duskply.engine.Engine;
import org.duskply.engine.Explanation.FrameLine;
import org.duskply.engine.deliver.Encoded;
import org.duskply.engine.deliver.Sink;
import org.duskply.engine.deliver.Sinks;
import org.duskply.engine.frame.FrameReader;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.FrameSources;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;

/**
 * The least that a rendering can take: {@code Floor RECIPE PICTURE FILE} decodes once each piece of
 * a frame that a rendering of the recipe touches, encodes once the finished picture, and does
 * nothing else, on all processors.
 *
 * <p>Prints the seconds of processor that it took to know the pieces and to have the finished
 * picture at hand; these are not part of the floor.
 */
public final class Floor {
  private static final double NANOS = 1e9;

  private final ExecutorService pool =
      Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
  private final List<FrameReader> readers = new ArrayList<>();
  private final List<Future<?>> decoded = new ArrayList<>();

  private Floor() {}

  /** Does it. */
  public static void main(String[] arguments) throws Exception {
    Path recipe = Path.of(arguments[0]);
    List<Planes> picture = picture(Path.of(arguments[1]));
    List<FrameLine> frames = frames(recipe);
    double uncounted = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() / NANOS;
    Floor floor = new Floor();
    try {
      frames.forEach(frame -> floor.decode(recipe.resolveSibling(frame.file()), frame));
      floor.encode(picture, Path.of(arguments[2]));
      floor.finish();
    } finally {
      floor.pool.shutdownNow();
    }
    System.out.println(String.format(Locale.ROOT, "%.2f", uncounted));
  }

  private static List<FrameLine> frames(Path recipe) {
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(recipe)) {
      return composite.explain().frames();
    }
  }

  private void decode(Path file, FrameLine frame) {
    FrameSource source = FrameSources.open(file);
    FrameReader reader = source.reader();
    readers.add(reader);
    if (source.access() == FrameSource.Access.RANDOM) {
      frame.unitsRead().stream().forEach(u -> decode(() -> reader.read(u)));
    } else {
      decode(() -> frame.unitsRead().stream().forEach(reader::read));
    }
  }

  /** Samples are let go at once. */
  private void decode(Runnable work) {
    decoded.add(pool.submit(work));
  }

  private void encode(List<Planes> picture, Path file)
      throws InterruptedException, ExecutionException {
    Region first = picture.get(0).area();
    int height = picture.get(picture.size() - 1).area().bottom();
    try (Sink sink =
        Sinks.open(PictureFile.spec(file, Format.TIFF, Compress.DEFLATE, first.width(), height))) {
      List<Future<Encoded>> encoded = new ArrayList<>();
      for (int b = 0; b < picture.size(); b++) {
        int band = b;
        encoded.add(pool.submit(() -> sink.encode(band, picture.get(band))));
      }
      for (int b = 0; b < picture.size(); b++) {
        sink.append(b, encoded.get(b).get());
      }
      sink.commit();
    }
  }

  private void finish() throws Exception {
    for (Future<?> piece : decoded) {
      piece.get();
    }
    for (FrameReader reader : readers) {
      reader.close();
    }
  }

  /** The bands of a finished picture, in linear light. */
  private static List<Planes> picture(Path file) {
    List<Planes> bands = new ArrayList<>();
    try (PictureRows rows = PictureRows.open(file)) {
      Region whole = Region.ofSize(rows.width(), rows.height());
      for (int top = 0; top < rows.height(); top += PictureFile.BAND_ROWS) {
        Planes band = new Planes(whole.rows(top, top + PictureFile.BAND_ROWS), 3);
        for (int y = top; y < band.area().bottom(); y++) {
          short[] codes = rows.row(y);
          for (int x = 0, at = band.at(0, y); x < rows.width(); x++, at++) {
            for (int c = 0; c < 3; c++) {
              band.plane(c)[at] = PictureRows.linear(codes[3 * x + c]);
            }
          }
        }
        bands.add(band);
      }
    }
    return bands;
  }
}
