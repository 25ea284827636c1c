package org.duskply.engine.blend;

import org.duskply.engine.pixel.Numbers;

/**
 * The brighter of two colours as a whole, by luminance, with a soft passage where they are within a
 * tenth of a stop of each other: what a pop does with {@code compare: luminance}.
 *
 * <pre>
 * q   = log₂((max(Y_f, 0) + ν)/(max(Y_b, 0) + ν))     ν = 2⁻¹⁰
 * w   = smooth(−0.1, 0.1, q)
 * out = b + w·(f − b)                                 the very bits of either at w = 0 and 1
 * </pre>
 *
 * <p>Channels are never mixed from two lights, so that a coloured flash leaves no fringe of a third
 * colour where it fades into a coloured dusk. With ν, noise in black decides nothing.
 */
final class BrighterKernel implements BlendKernel {
  /** What is added to both luminances. */
  static final float NOISE = 0x1p-10f;

  private static final float PER_WIDTH = 5f; // 1/0.2 stops

  private final float ofRed;
  private final float ofGreen;
  private final float ofBlue;

  /**
   * A comparison.
   *
   * @param weights of red, green and blue in luminance, summing to 1
   */
  BrighterKernel(double[] weights) {
    this.ofRed = (float) weights[0];
    this.ofGreen = (float) weights[1];
    this.ofBlue = (float) weights[2];
  }

  @Override
  public void run(float[][] below, float[][] frame, float[][] out, int from, int to) {
    for (int i = from; i < to; i++) {
      float brighter = light(frame, i) / light(below, i);
      float along = Math.min(Math.max(Numbers.log2(brighter) * PER_WIDTH + 0.5f, 0f), 1f);
      float weight = along * along * (3f - 2f * along);
      for (int p = 0; p < 3; p++) {
        float b = below[p][i];
        float f = frame[p][i];
        out[p][i] = weight == 0f ? b : weight == 1f ? f : b + weight * (f - b);
      }
    }
  }

  private float light(float[][] picture, int i) {
    float y = ofRed * picture[0][i] + ofGreen * picture[1][i] + ofBlue * picture[2][i];
    return Math.max(y, 0f) + NOISE;
  }
}
