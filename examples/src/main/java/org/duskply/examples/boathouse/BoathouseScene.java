package org.duskply.examples.boathouse;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.duskply.examples.trace.Maths;

/** Renders the boathouse: one picture a light source, the same bits for any number of threads. */
public final class BoathouseScene {
  /** Samples a pixel, unless told otherwise. */
  public static final int SAMPLES = 4;

  private static final double STEP_X = 0.7548776662466927;
  private static final double STEP_Y = 0.5698402909980532;

  /** Linear light in BT.709 primaries (in which the scene is painted) to BT.2020 (BT.2087-0). */
  private static final float[] TO_FRAME = {
    0.6274f, 0.3293f, 0.0433f, 0.0691f, 0.9195f, 0.0114f, 0.0164f, 0.0880f, 0.8956f
  };

  private final Scene scene;
  private final int samples;

  private BoathouseScene(boolean withPerson, int samples) {
    scene = Scene.build(withPerson);
    this.samples = samples;
  }

  /** The scene as the finished picture shows it. */
  public static BoathouseScene empty() {
    return new BoathouseScene(false, SAMPLES);
  }

  static BoathouseScene of(boolean withPerson, int samples) {
    return new BoathouseScene(withPerson, samples);
  }

  /** Renders a part of a picture in the caller's thread. */
  Buffers render(int width, int height, int left, int top, int partWidth, int partHeight) {
    Buffers out = new Buffers(left, top, partWidth, partHeight);
    Tracer tracer = new Tracer(scene, View.pixel(width));
    for (int y = 0; y < partHeight; y++) {
      for (int x = 0; x < partWidth; x++) {
        pixel(tracer, left + x, top + y, width, height);
        store(tracer.sum, out, 3 * (y * partWidth + x));
      }
    }
    return out;
  }

  private void pixel(Tracer tracer, int x, int y, int width, int height) {
    java.util.Arrays.fill(tracer.sum, 0);
    for (int s = 0; s < samples; s++) {
      double px = x + Maths.fraction(0.5 + (s + 1) * STEP_X);
      double py = y + Maths.fraction(0.5 + (s + 1) * STEP_Y);
      double dx = View.right(px, width);
      double dy = View.up(py, width, height);
      double n = 1 / Math.sqrt(dx * dx + dy * dy + 1);
      tracer.sample(x, y, s, dx * n, dy * n, n);
    }
  }

  private void store(double[] sum, Buffers out, int at) {
    double share = 1.0 / samples;
    float[] m = TO_FRAME;
    for (int light = 0; light < Lights.COUNT; light++) {
      float r = (float) (sum[3 * light] * share);
      float g = (float) (sum[3 * light + 1] * share);
      float b = (float) (sum[3 * light + 2] * share);
      float[] plane = out.light(light);
      plane[at] = m[0] * r + m[1] * g + m[2] * b;
      plane[at + 1] = m[3] * r + m[4] * g + m[5] * b;
      plane[at + 2] = m[6] * r + m[7] * g + m[8] * b;
    }
  }

  /** Renders the whole picture in memory. */
  public Buffers render(int width, int height, int threads) {
    int rows = 16;
    Buffers whole = new Buffers(0, 0, width, height);
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<Buffers>> bands = new ArrayList<>();
      for (int top = 0; top < height; top += rows) {
        int from = top;
        int count = Math.min(rows, height - top);
        bands.add(pool.submit(() -> render(width, height, 0, from, width, count)));
      }
      for (Future<Buffers> band : bands) {
        Buffers b = band.get();
        for (int light = 0; light < Lights.COUNT; light++) {
          System.arraycopy(
              b.light(light), 0, whole.light(light), 3 * width * b.top(), 3 * width * b.height());
        }
      }
      return whole;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("The rendering was interrupted.", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("The rendering failed.", e.getCause());
    } finally {
      pool.shutdownNow();
    }
  }
}
