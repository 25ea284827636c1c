package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.duskply.engine.testing.Desk;
import org.junit.jupiter.api.Test;

/** Pictures of odd shapes, and recipes longer and deeper than any photographer writes. */
class OddPicturesTest extends ThreeFrames {
  @Test
  void picturesOfOnePixelAndOfOddShapesAreMade() {
    for (int[] size : new int[][] {{1, 1}, {1, 300}, {3000, 2}, {513, 65}}) {
      Desk desk = desk(size[0], size[1]);
      Path recipe =
          desk.recipe(
              HEAD
                  + """
                  steps:
                    - { pop: a, mask: { polygon: "-5,-5 900,0 900,400 0,400", feather: 40 } }
                    - { lay: b, opacity: 0.5 }
                  deliverables: { print: print.tif, web: web.jpg, screen: { file: s.png, long-edge: 7 } }
                  """);
      try (Engine engine = Engine.builder().build()) {
        assertThat(deliver(engine, recipe).files()).hasSize(3);
      }
    }
  }

  @Test
  void threeHundredStepsAndTenGroupsDeepAreMade() {
    Desk desk = desk(30, 20);
    StringBuilder text = new StringBuilder(HEAD).append("steps:\n");
    for (int i = 0; i < 300; i++) {
      text.append("  - { pop: ")
          .append(i % 2 == 0 ? "a" : "b")
          .append(", opacity: 0.01, mask: { polygon: \"0,0 30,0 ")
          .append(i % 30)
          .append(",20\" } }\n");
    }
    text.append("  - ")
        .append("group: [ { ".repeat(9))
        .append("group: [ { pop: a } ]")
        .append(" } ]".repeat(9))
        .append("\n");
    text.append("deliverables: { print: print.tif }\n");
    try (Engine engine = Engine.builder().build()) {
      assertThat(deliver(engine, desk.recipe(text.toString())).files()).hasSize(1);
    }
  }
}
