package org.duskply.benchmarks;

import java.util.concurrent.TimeUnit;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Encoded;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/**
 * How many megapixels a second one thread gets through, kernel by kernel. An operation is a pixel
 * and the unit a microsecond, so that JMH's ops/us are megapixels a second. Every answer is checked
 * before it is timed ({@link Work}).
 *
 * <p>To run all, or those whose names match an expression, from the top of the checkout:
 *
 * <pre>
 * mvn -B -ntp -Pmeasure -DskipTests -pl benchmarks -am package
 * mvn -B -ntp -Pmeasure -DskipTests -pl benchmarks -am package -Dmeasure=lighten
 * mvn -B -ntp -Pmeasure -DskipTests -pl benchmarks -am package "-Dmeasure=.* -f 0 -wi 0 -i 1"
 * </pre>
 *
 * <p>The last says in seconds whether all of them still work. Figures are worth comparing on one
 * quiet machine only.
 */
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@OperationsPerInvocation(Work.PIXELS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class Kernels {
  /** What the engine works through at a time. */
  private static final int CHUNK = 512;

  /** A pop on the picture below: three planes, chunk by chunk as in the engine. */
  @Benchmark
  public float[][] lighten(Work.Blending work) {
    work.run(CHUNK);
    return work.out;
  }

  /** Linear light to the encoded axis: three planes; the copy that it starts from is timed too. */
  @Benchmark
  public float encode(Work.Encoding work) {
    float last = 0;
    for (int from = 0; from < work.linear.length; from += CHUNK) {
      System.arraycopy(work.linear, from, work.chunk, 0, CHUNK);
      Encoded.encode(work.chunk, 0, CHUNK);
      last = work.chunk[CHUNK - 1];
    }
    return last;
  }

  /** A feather of 24 pixels: one plane, weighted sample by sample. */
  @Benchmark
  public Object featherOf24(Work.SmallFeather work) {
    return work.run();
  }

  /** A feather of 400 pixels: one plane, weighted by means of cells. */
  @Benchmark
  public Object featherOf400(Work.LargeFeather work) {
    return work.run();
  }

  /** The coverage of an outline with 200 corners: one plane. */
  @Benchmark
  public float[] outline(Work.Drawing work) {
    work.raster.fill(work.area, work.coverage);
    return work.coverage;
  }

  /** 16-bit RGB with some noise, deflated with predictor 2, from the file to samples. */
  @Benchmark
  public void tiffStrips(Work.Decoding work, Blackhole hole) {
    for (int unit = 0; unit < work.source.units(); unit++) {
      Samples samples = work.reader.read(unit);
      hole.consume(samples);
    }
  }
}
