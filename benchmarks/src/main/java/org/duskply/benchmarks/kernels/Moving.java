package org.duskply.benchmarks.kernels;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * Kernels that do little but move bytes, each beside a triad {@code a = b + s·c} over the same
 * arrays in the same process, by turns: over arrays far beyond any cache, where memory is the
 * bound, and over one chunk of a fused run, where the core is. Both go chunk by chunk, as the
 * engine does.
 *
 * <p>The tool times both together; what counts are the {@link Times} of each.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(
    value = 1,
    jvmArgsAppend = {"-Xms1500m", "-Xmx1500m", "-XX:+AlwaysPreTouch"})
public class Moving extends Megapixels {
  /** Bytes of a pixel that a triad moves: two samples read and one written, in three planes. */
  static final int TRIAD_BYTES = 36;

  /** Pixels that are gone through by turns, however short the arrays. */
  private static final int TURN = 1 << 20;

  private static final float SCALAR = 0.75f;

  @Param public Mover kernel = Mover.MAX;

  @Param({"512", "16777216"})
  public int pixels;

  private Mover.Pictures on =
      new Mover.Pictures(new float[3][0], new float[3][0], new float[0], new float[3][0]);
  private int rounds;

  /** What triad and kernel took, and the pixels that each went through. */
  @State(Scope.Thread)
  @AuxCounters(AuxCounters.Type.EVENTS)
  public static class Times {
    public long triadNanos;
    public long kernelNanos;
    public long movedPixels;
  }

  @Setup
  public void prepare() {
    float[][] out = new float[3][pixels];
    on = new Mover.Pictures(picture(0), picture(1), mask(), out);
    rounds = Math.max(1, TURN / pixels);
    int checked = Math.min(pixels, Fused.PIXELS);
    triad();
    for (int i = 0; i < checked; i++) {
      for (int p = 0; p < 3; p++) {
        double want = on.below()[p][i] + (double) SCALAR * on.frame()[p][i];
        Answers.near("triad", i, out[p][i], want);
      }
    }
    float[][] before = {out[0].clone(), out[1].clone(), out[2].clone()};
    move();
    for (int i = 0; i < checked; i++) {
      double[] want =
          kernel.formula(
              Fused.pixel(on.below(), i),
              Fused.pixel(on.frame(), i),
              on.mask()[i],
              Fused.pixel(before, i));
      Answers.near(kernel, i, out, want);
    }
  }

  /** A short picture over and over. */
  private float[][] picture(int number) {
    float[][] once = Content.VIEW.picture(Math.min(pixels, Fused.PIXELS), number);
    return new float[][] {repeated(once[0]), repeated(once[1]), repeated(once[2])};
  }

  private float[] mask() {
    float[] once = Content.NOISE.plane(Math.min(pixels, Fused.PIXELS), 9);
    for (int i = 0; i < once.length; i++) {
      once[i] = 0.125f + 0.75f * once[i];
    }
    return repeated(once);
  }

  private float[] repeated(float[] once) {
    float[] plane = new float[pixels];
    for (int from = 0; from < pixels; from += once.length) {
      System.arraycopy(once, 0, plane, from, Math.min(once.length, pixels - from));
    }
    return plane;
  }

  private void triad() {
    for (int from = 0; from < pixels; from += Fused.CHUNK) {
      int to = Math.min(pixels, from + Fused.CHUNK);
      for (int p = 0; p < 3; p++) {
        triad(on.below()[p], on.frame()[p], on.out()[p], from, to);
      }
    }
  }

  private static void triad(float[] b, float[] c, float[] a, int from, int to) {
    for (int i = from; i < to; i++) {
      a[i] = b[i] + SCALAR * c[i];
    }
  }

  private void move() {
    for (int from = 0; from < pixels; from += Fused.CHUNK) {
      kernel.run(on, from, Math.min(pixels, from + Fused.CHUNK));
    }
  }

  @Benchmark
  public Mover.Pictures besideTriad(Times times) {
    long begun = System.nanoTime();
    for (int round = 0; round < rounds; round++) {
      triad();
    }
    long between = System.nanoTime();
    for (int round = 0; round < rounds; round++) {
      move();
    }
    times.kernelNanos += System.nanoTime() - between;
    times.triadNanos += between - begun;
    times.movedPixels += (long) rounds * pixels;
    return on;
  }
}
