package org.duskply.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The equation at its edges. */
class MixTest {
  private static final float[] BELOW = {0.25f, -0f, 65504f, 1e-38f, 0.1f};
  private static final float[] STEP = {0.75f, 1f, -65504f, 3f, 0.3f};

  @Test
  void weightZeroKeepsTheVeryBits() {
    float[] out = BELOW.clone();
    Mix.mixed(STEP, new float[5], null, 1f, out, 0, 5);
    for (int i = 0; i < 5; i++) {
      assertThat(Float.floatToRawIntBits(out[i])).isEqualTo(Float.floatToRawIntBits(BELOW[i]));
    }
    Mix.mixed(STEP, null, null, 0f, out, 0, 5);
    assertThat(out).containsExactly(BELOW);
  }

  @Test
  void weightOneIsTheStepItself() {
    float[] out = BELOW.clone();
    Mix.mixed(STEP, null, new float[] {1, 1, 1, 1, 1}, 1f, out, 0, 5);
    assertThat(out).containsExactly(STEP);
  }

  @Test
  void betweenIsBelowPlusTheShareOfTheDifference() {
    float[] out = BELOW.clone();
    Mix.mixed(STEP, new float[] {0.5f, 0.5f, 0.5f, 0.5f, 0.25f}, null, 1f, out, 0, 5);
    assertThat(out[0]).isEqualTo(0.5f);
    assertThat(out[1]).isEqualTo(0.5f);
    assertThat(out[2]).isEqualTo(0f);
    assertThat(out[4]).isEqualTo(0.1f + 0.25f * (0.3f - 0.1f));
  }

  @Test
  void halfOfWhiteOverBlackIsHalfTheLight() {
    // 0.5 of the light of white is code 188 of 255 by IEC 61966-2-1; mixing codes would give 128.
    float[] out = {0f};
    Mix.mixed(new float[] {1f}, null, null, 0.5f, out, 0, 1);
    assertThat(Math.round(255 * (1.055 * Math.pow(out[0], 1 / 2.4) - 0.055))).isEqualTo(188);
  }

  @Test
  void theWeightIsOneProductRoundedOnce() {
    float m = 0.1f;
    float c = 0.7f;
    float o = 0.3f;
    assertThat(Mix.weight(m, c, o)).isEqualTo((float) ((double) m * c * o));
    assertThat(Mix.weight(m, 1f, o)).isEqualTo(m * o);
  }

  @Test
  void shortLoopsGiveTheBitsOfTheLongOne() {
    float[] mask = {0.1f, 0.9f, 0.333f, 0.5f, 0.999f};
    for (float opacity : new float[] {1f, 0.7f, 1e-3f}) {
      float[] full = BELOW.clone();
      float[] between = BELOW.clone();
      Mix.mixed(STEP, mask, null, opacity, full, 0, 5);
      Mix.between(STEP, mask, opacity, between, 0, 5);
      assertThat(between).containsExactly(full);
    }
    float[] full = BELOW.clone();
    float[] evenly = BELOW.clone();
    Mix.mixed(STEP, null, null, 0.7f, full, 0, 5);
    Mix.evenly(STEP, 0.7f, evenly, 0, 5);
    assertThat(evenly).containsExactly(full);
  }
}
