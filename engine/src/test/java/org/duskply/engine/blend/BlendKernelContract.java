package org.duskply.engine.blend;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.Sequence;
import org.duskply.engine.testing.reference.ReferenceBlend;
import org.duskply.recipe.step.Blend;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What every blend mode promises, whatever its formula. */
abstract class BlendKernelContract {
  private static final float GUARD = -123.25f;
  private static final float BEFORE_ONE = Math.nextDown(1f);
  private static final float AFTER_ONE = Math.nextUp(1f);

  static final float[] EDGES = {
    -65504,
    -1,
    -0.25f,
    -Float.MIN_VALUE,
    -0f,
    0,
    Float.MIN_VALUE,
    Float.MIN_NORMAL,
    1e-20f,
    0.18f,
    0.5f,
    BEFORE_ONE,
    1,
    AFTER_ONE,
    1.5f,
    65504
  };

  // Three roundings of a float, each 2⁻²⁴ of a value at most the answer or 1.
  private static final double BOUND = 3 * 0x1p-24;

  final Blend mode;
  final BlendKernel kernel;

  BlendKernelContract(Blend mode) {
    this.mode = mode;
    this.kernel = Blends.of(mode);
  }

  final float blend(float below, float frame) {
    float[] out = new float[1];
    kernel.run(new float[] {below}, new float[] {frame}, out, 0, 1);
    return out[0];
  }

  @Test
  void edgesFollowTheFormula() {
    for (float b : EDGES) {
      for (float f : EDGES) {
        Close.check(b + " and " + f, blend(b, f), ReferenceBlend.of(mode, b, f), BOUND);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 7, 64, 513})
  void writesItsWindowAlone(int length) {
    for (int from : new int[] {0, 1, 5}) {
      float[] below = new Sequence(1).next(length + 11, -0.5, 2);
      float[] frame = new Sequence(2).next(length + 11, -0.5, 2);
      float[] out = new float[length + 11];
      Arrays.fill(out, GUARD);
      kernel.run(below, frame, out, from, from + length);
      for (int i = 0; i < out.length; i++) {
        boolean inside = i >= from && i < from + length;
        double wanted = inside ? ReferenceBlend.of(mode, below[i], frame[i]) : GUARD;
        Close.check(i, out[i], wanted, inside ? BOUND : 0);
      }
      Close.sameBits(below, new Sequence(1).next(length + 11, -0.5, 2));
      Close.sameBits(frame, new Sequence(2).next(length + 11, -0.5, 2));
    }
  }

  @Test
  void sameBitsWhereverItWritesAndHoweverItIsDivided() {
    float[] below = new Sequence(3).next(1001, -0.5, 3);
    float[] frame = new Sequence(4).next(1001, -0.5, 3);
    float[] whole = new float[1001];
    kernel.run(below, frame, whole, 0, 1001);
    for (int width : new int[] {1, 3, 64, 512}) {
      float[] parts = new float[1001];
      for (int from = 0; from < 1001; from += width) {
        kernel.run(below, frame, parts, from, Math.min(1001, from + width));
      }
      Close.sameBits(parts, whole);
    }
    float[] overBelow = below.clone();
    kernel.run(overBelow, frame, overBelow, 0, 1001);
    Close.sameBits(overBelow, whole);
    float[] overFrame = frame.clone();
    kernel.run(below, overFrame, overFrame, 0, 1001);
    Close.sameBits(overFrame, whole);
  }

  @Test
  void neverFallsAsEitherRisesAboveBlack() {
    Sequence sequence = new Sequence(5);
    for (int i = 0; i < 20_000; i++) {
      float[] v = sequence.next(4, 0, 2);
      float low = blend(Math.min(v[0], v[1]), Math.min(v[2], v[3]));
      float high = blend(Math.max(v[0], v[1]), Math.max(v[2], v[3]));
      assertThat(low).isLessThanOrEqualTo(high + 0x1p-23f); // each rounded on its own
    }
  }
}
