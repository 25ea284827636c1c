package org.duskply.engine.blend;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.pixel.Encoded;
import org.duskply.engine.testing.Sequence;
import org.duskply.recipe.step.Blend;
import org.junit.jupiter.api.Test;

/** The lesser of the two. */
class DarkenTest extends BlendKernelContract {
  DarkenTest() {
    super(Blend.DARKEN);
  }

  @Test
  void takesOneOfTheTwoAlsoBelowBlackAndAboveWhite() {
    for (float b : EDGES) {
      for (float f : EDGES) {
        assertThat(blend(b, f)).isEqualTo(b < f ? b : b > f ? f : b + 0f);
      }
    }
  }

  /** W3C Compositing 1: with full opacity an increasing curve may come before or after. */
  @Test
  void commutesWithAnIncreasingCurve() {
    Sequence sequence = new Sequence(8);
    for (int i = 0; i < 10_000; i++) {
      float b = (float) sequence.next();
      float f = (float) sequence.next();
      assertThat(blend(Encoded.encode(b), Encoded.encode(f)))
          .isEqualTo(Encoded.encode(blend(b, f)));
    }
  }
}
