package org.duskply.examples.boathouse;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class BoathouseSceneTest {
  private static final int WIDTH = 90;
  private static final int HEIGHT = 60;

  @Test
  void sameBitsForAnyNumberOfThreadsAndAnyPart() {
    BoathouseScene scene = BoathouseScene.of(false, 2);
    Buffers one = scene.render(WIDTH, HEIGHT, 1);
    Buffers three = scene.render(WIDTH, HEIGHT, 3);
    Buffers part = scene.render(WIDTH, HEIGHT, 31, 22, 40, 17);
    for (int light = 0; light < Lights.COUNT; light++) {
      assertThat(three.light(light)).as("light %d", light).containsExactly(one.light(light));
      for (int y = 0; y < part.height(); y++) {
        for (int i = 0; i < 3 * part.width(); i++) {
          assertThat(part.light(light)[3 * y * part.width() + i])
              .isEqualTo(one.light(light)[3 * ((22 + y) * WIDTH + 31) + i]);
        }
      }
    }
  }

  @Test
  void everyLightReachesThePictureAndNoneIsBelowZero() {
    Buffers buffers = BoathouseScene.of(false, 1).render(WIDTH, HEIGHT, 2);
    for (int light = 0; light < Lights.COUNT; light++) {
      double sum = 0;
      for (float v : buffers.light(light)) {
        assertThat(v).as("light %d", light).isBetween(0f, 1000f);
        sum += v;
      }
      assertThat(sum / (3 * WIDTH * HEIGHT)).as("mean of light %d", light).isGreaterThan(1e-4);
    }
  }

  @Test
  void theAssistantIsInNoOtherPartOfThePicture() {
    Buffers empty = BoathouseScene.of(false, 1).render(240, 160, 2);
    Buffers person = BoathouseScene.of(true, 1).render(240, 160, 2);
    double[] part = FrameWriter.PERSON;
    double within = 0;
    double beyond = 0;
    for (int y = 0; y < 160; y++) {
      for (int x = 0; x < 240; x++) {
        boolean inside = x < part[2] * 240 && y >= part[1] * 160 && y < part[3] * 160;
        float by = greatestChange(empty, person, 3 * (y * 240 + x));
        within += inside ? by : 0;
        beyond += inside ? 0 : by;
      }
    }
    // Beyond there are only a far shadow's edge and the flash head's image in a pane.
    assertThat(within).isGreaterThan(10);
    assertThat(beyond).isLessThan(0.02 * within);
  }

  private static float greatestChange(Buffers a, Buffers b, int at) {
    float most = 0;
    for (int light = 0; light < Lights.COUNT; light++) {
      most = Math.max(most, Math.abs(a.light(light)[at] - b.light(light)[at]));
    }
    return most;
  }
}
