package org.duskply.engine.blend;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.Sequence;
import org.duskply.recipe.step.Blend;
import org.junit.jupiter.api.Test;

/** Screen: lights inside 0…1 join without passing white, above it the brighter stays. */
class ScreenTest extends BlendKernelContract {
  ScreenTest() {
    super(Blend.SCREEN);
  }

  @Test
  void blackLeavesThePictureAndTheRestBrightensUpToWhite() {
    Sequence sequence = new Sequence(7);
    for (int i = 0; i < 10_000; i++) {
      float b = (float) sequence.next();
      float f = (float) sequence.next();
      assertThat(blend(b, 0)).isEqualTo(b);
      assertThat(blend(b, f)).isBetween(Math.max(b, f), 1f).isEqualTo(blend(f, b));
      // screen(b, f) = 1 − multiply(1 − b, 1 − f), to the rounding of values up to 1
      Close.check(i, blend(b, f), 1 - (1 - (double) b) * (1 - (double) f), 0x1p-23);
    }
  }

  @Test
  void twoLightsAboveWhiteAreTheBrighter() {
    assertThat(blend(2, 2)).isEqualTo(2); // the bare formula says 0
    assertThat(blend(3, 2)).isEqualTo(3); // and here −1
  }

  @Test
  void passesWhiteWithoutAStep() {
    for (float f : new float[] {0, 0.18f, 0.5f, 1}) {
      Close.check(f, blend(Math.nextDown(1f), f), blend(Math.nextUp(1f), f), 0x1p-22);
    }
  }

  @Test
  void colourBelowBlackCountsAsBlack() {
    assertThat(blend(-0.5f, 0.25f)).isEqualTo(0.25f);
    assertThat(blend(0.25f, -0.5f)).isEqualTo(0.25f);
    assertThat(blend(-1, -2)).isZero();
  }
}
