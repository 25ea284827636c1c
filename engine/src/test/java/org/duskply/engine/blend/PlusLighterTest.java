package org.duskply.engine.blend;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.recipe.step.Blend;
import org.junit.jupiter.api.Test;

/** The sum, as lights add; nothing clips. */
class PlusLighterTest extends BlendKernelContract {
  PlusLighterTest() {
    super(Blend.PLUS_LIGHTER);
  }

  @Test
  void lightsAddPastWhite() {
    assertThat(blend(0.75f, 0.5f)).isEqualTo(1.25f);
    assertThat(blend(65504, 65504)).isEqualTo(131008);
    assertThat(blend(0.5f, -0.125f)).isEqualTo(0.375f);
  }
}
