package org.duskply.engine.blend;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.testing.ColourBlendContract;
import org.duskply.engine.testing.reference.PopFormulas;
import org.junit.jupiter.api.Test;

/** A pop that compares by luminance. */
class BrighterTest extends ColourBlendContract {
  // Luminance of BT.709 primaries (ITU-R BT.709-6, four digits): 0.2126, 0.7152, 0.0722.
  private static final double[] WEIGHTS = {0.2126, 0.7152, 0.0722};

  @Override
  protected BlendKernel kernel() {
    return Blends.brighter(WEIGHTS);
  }

  @Override
  protected double[] formula(double[] below, double[] frame) {
    return PopFormulas.brighter(WEIGHTS, below, frame);
  }

  /**
   * Each luminance is off by 5·2⁻²⁴ of the sizes that it adds up, which counts by its share of what
   * it adds up to; the quotient and the logarithm add 3·2⁻²⁴. One part of log₂ is 1/ln 2 of such a
   * share, smooth is at most 1.5 steep over a width of 0.2 stops: 7.5/ln 2 = 10.9. The weight's own
   * arithmetic adds 6·2⁻²⁴. All of that is times the difference of the two, which is rounded twice.
   */
  @Override
  protected double bound(double[] below, double[] frame) {
    double share = 5 * (spread(below) + spread(frame)) + 3;
    double weight = Math.min(1, 0x1p-24 * (11 * share + 6));
    return (weight + 0x1p-23) * 2 * greatest(below, frame);
  }

  /** What the sizes of the channels sum to, in shares of the luminance that is compared. */
  private static double spread(double[] c) {
    double sizes = 0;
    for (int p = 0; p < 3; p++) {
      sizes += WEIGHTS[p] * Math.abs(c[p]);
    }
    return (sizes + 0x1p-10) / PopFormulas.compared(WEIGHTS, c);
  }

  private static float[] blend(float[] below, float[] frame) {
    float[][] out = new float[3][1];
    Blends.brighter(WEIGHTS)
        .run(
            new float[][] {{below[0]}, {below[1]}, {below[2]}},
            new float[][] {{frame[0]}, {frame[1]}, {frame[2]}},
            out,
            0,
            1);
    return new float[] {out[0][0], out[1][0], out[2][0]};
  }

  /** Dusk is blue, the flash is warm: channel by channel a third colour would come of it. */
  @Test
  void takesColoursWhole() {
    float[] dusk = {0.05f, 0.1f, 0.3f};
    float[] flash = {0.5f, 0.4f, 0.2f};
    assertThat(blend(dusk, flash)).isEqualTo(flash);
    assertThat(blend(flash, dusk)).isEqualTo(flash);
  }

  @Test
  void equalLightIsHalfOfEach() {
    // Equal luminance: log₂ 1 = 0 is the middle of the passage.
    float[] grey = {0.2f, 0.2f, 0.2f};
    assertThat(blend(grey, grey)).isEqualTo(grey);
    float[] red = {(float) (0.2 / 0.2126), 0f, 0f};
    float[] mixed = blend(grey, red);
    assertThat(mixed[1]).isBetween(0.0999f, 0.1001f);
  }

  @Test
  void aTenthOfAStopDecides() {
    float[] grey = {0.2f, 0.2f, 0.2f};
    // ν weighs a little at 0.2; a quarter more than the tenth of a stop is on the safe side.
    float more = (float) (0.2 * StrictMath.pow(2, 0.125));
    assertThat(blend(grey, new float[] {more, more, more}))
        .isEqualTo(new float[] {more, more, more});
    assertThat(blend(new float[] {more, more, more}, grey))
        .isEqualTo(new float[] {more, more, more});
  }

  @Test
  void noiseInBlackDecidesNothing() {
    // A hundredth of ν against nothing is 0.014 stops: near the middle.
    float tiny = 0x1p-10f / 100;
    float[] mixed = blend(new float[] {0, 0, 0}, new float[] {tiny, tiny, tiny});
    assertThat(mixed[0]).isBetween(0.45f * tiny, 0.65f * tiny);
    assertThat(blend(new float[] {-0.1f, -0.1f, -0.1f}, new float[] {-0.3f, -0.3f, -0.3f})[0])
        .isBetween(-0.21f, -0.19f);
  }
}
