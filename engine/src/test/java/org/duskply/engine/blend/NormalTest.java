package org.duskply.engine.blend;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.recipe.step.Blend;
import org.junit.jupiter.api.Test;

/** The frame itself. */
class NormalTest extends BlendKernelContract {
  NormalTest() {
    super(Blend.NORMAL);
  }

  @Test
  void bitsOfTheFrame() {
    for (float f : EDGES) {
      assertThat(Float.floatToRawIntBits(blend(0.3f, f))).isEqualTo(Float.floatToRawIntBits(f));
    }
  }
}
