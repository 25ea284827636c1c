package org.duskply.benchmarks.kernels;

import java.util.concurrent.TimeUnit;
import org.duskply.engine.pixel.Encoded;
import org.duskply.engine.pixel.Numbers;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Setup;

/** Tables and roots, in nanoseconds a sample, each in a loop over a plane in cache. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@OperationsPerInvocation(Fused.PIXELS)
public class Tables extends Megapixels {
  @Param("VIEW")
  public Content content = Content.VIEW;

  private float[] in = new float[0];
  private final float[] out = new float[Fused.PIXELS];

  @Setup
  public void prepare() {
    in = content.plane(Fused.PIXELS, 0);
    encode();
    check("encode", Encoded::encodeExactly);
    decode();
    check("decode", Encoded::decodeExactly);
    cubeRoot();
    check("cube root", StrictMath::cbrt);
    logarithm();
    check("logarithm", x -> x > 0 ? StrictMath.log(x) / StrictMath.log(2) : -150);
    powerOfTwo();
    check("power of two", x -> StrictMath.pow(2, x));
    power();
    check("power", x -> Math.copySign(StrictMath.pow(Math.abs(x), 0.95), x));
  }

  private void check(String what, java.util.function.DoubleUnaryOperator formula) {
    for (int i = 0; i < Fused.PIXELS; i++) {
      Answers.near(what, i, out[i], formula.applyAsDouble(in[i]));
    }
  }

  /** Linear light to the encoded axis. */
  @Benchmark
  public float[] encode() {
    System.arraycopy(in, 0, out, 0, Fused.PIXELS);
    Encoded.encode(out, 0, Fused.PIXELS);
    return out;
  }

  /** The encoded axis to linear light. */
  @Benchmark
  public float[] decode() {
    System.arraycopy(in, 0, out, 0, Fused.PIXELS);
    Encoded.decode(out, 0, Fused.PIXELS);
    return out;
  }

  @Benchmark
  public float[] cubeRoot() {
    for (int i = 0; i < Fused.PIXELS; i++) {
      out[i] = Numbers.cbrt(in[i]);
    }
    return out;
  }

  @Benchmark
  public float[] logarithm() {
    for (int i = 0; i < Fused.PIXELS; i++) {
      out[i] = Numbers.log2(in[i]);
    }
    return out;
  }

  @Benchmark
  public float[] powerOfTwo() {
    for (int i = 0; i < Fused.PIXELS; i++) {
      out[i] = Numbers.exp2(in[i]);
    }
    return out;
  }

  @Benchmark
  public float[] power() {
    for (int i = 0; i < Fused.PIXELS; i++) {
      out[i] = Numbers.pow(in[i], 0.95);
    }
    return out;
  }
}
