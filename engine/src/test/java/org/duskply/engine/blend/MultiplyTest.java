package org.duskply.engine.blend;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.testing.Sequence;
import org.duskply.recipe.step.Blend;
import org.junit.jupiter.api.Test;

/** The product; white leaves the picture, nothing in 0…1 brightens it. */
class MultiplyTest extends BlendKernelContract {
  MultiplyTest() {
    super(Blend.MULTIPLY);
  }

  @Test
  void whiteLeavesThePictureAndTheRestDarkens() {
    Sequence sequence = new Sequence(6);
    for (int i = 0; i < 10_000; i++) {
      float b = (float) sequence.next();
      float f = (float) sequence.next();
      assertThat(blend(b, 1)).isEqualTo(b);
      assertThat(blend(b, f)).isLessThanOrEqualTo(b).isEqualTo(blend(f, b));
    }
  }
}
