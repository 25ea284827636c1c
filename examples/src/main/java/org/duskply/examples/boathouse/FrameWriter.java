package org.duskply.examples.boathouse;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Renders the scene band by band and writes each band into all the frames at once, so that memory
 * stays at a few bands whatever the size. Bands are rendered side by side and written in order.
 */
final class FrameWriter {
  /** The part of the picture that the assistant, with shadow and mirror image, can touch. */
  static final double[] PERSON = {0.0, 0.40, 0.24, 0.80};

  private final Path folder;
  private final int width;
  private final int height;
  private final int threads;
  private final List<Shot> shots = Evening.shots();

  FrameWriter(Path folder, int width, int height, int threads) {
    this.folder = folder;
    this.width = width;
    this.height = height;
    this.threads = threads;
  }

  void write(Consumer<String> progress) throws IOException {
    List<CameraTiff> files = new ArrayList<>();
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      for (Shot shot : shots) {
        files.add(new CameraTiff(folder.resolve(shot.file()), shot, width, height));
      }
      bands(pool, files, progress);
      for (CameraTiff file : files) {
        file.finish();
      }
    } finally {
      pool.shutdownNow();
      for (CameraTiff file : files) {
        file.close();
      }
    }
  }

  private void bands(ExecutorService pool, List<CameraTiff> files, Consumer<String> progress)
      throws IOException {
    BoathouseScene empty = BoathouseScene.empty();
    BoathouseScene person = BoathouseScene.of(true, BoathouseScene.SAMPLES);
    Deque<Future<List<byte[]>>> ahead = new ArrayDeque<>();
    int next = 0;
    for (int top = 0; top < height; top += CameraTiff.ROWS_PER_STRIP) {
      while (next < height && ahead.size() < 2 * threads) {
        int from = next;
        ahead.add(pool.submit(() -> band(empty, person, from)));
        next += CameraTiff.ROWS_PER_STRIP;
      }
      List<byte[]> strips = result(ahead.removeFirst());
      for (int i = 0; i < files.size(); i++) {
        files.get(i).append(strips.get(i));
      }
      int done = Math.min(height, top + CameraTiff.ROWS_PER_STRIP);
      progress.accept("  rows " + done + " of " + height);
    }
  }

  /** Renders one band under all lights and exposes it for every shot. */
  private List<byte[]> band(BoathouseScene empty, BoathouseScene person, int top) {
    int rows = Math.min(CameraTiff.ROWS_PER_STRIP, height - top);
    Buffers lights = empty.render(width, height, 0, top, width, rows);
    Buffers withPerson = part(person, top, rows);
    List<byte[]> strips = new ArrayList<>();
    for (Shot shot : shots) {
      ShotFrame frame = ShotFrame.expose(shot, lights, shot.withPerson() ? withPerson : null);
      strips.add(CameraTiff.strip(frame));
    }
    return strips;
  }

  private @Nullable Buffers part(BoathouseScene person, int top, int rows) {
    int from = Math.max(top, (int) (PERSON[1] * height));
    int to = Math.min(top + rows, (int) (PERSON[3] * height));
    int left = (int) (PERSON[0] * width);
    int right = (int) (PERSON[2] * width);
    return to <= from ? null : person.render(width, height, left, from, right - left, to - from);
  }

  private static List<byte[]> result(Future<List<byte[]>> future) throws IOException {
    try {
      return future.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("The rendering was interrupted.", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("The rendering failed.", e.getCause());
    }
  }
}
