package org.duskply.engine.step;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.duskply.engine.testing.LightTable;
import org.duskply.recipe.step.Step;
import org.junit.jupiter.api.Test;

/** Tables of adjustments take time; the same list is prepared once for all alternates. */
class PreparedOnceTest {
  @Test
  void theSameListOverOtherPicturesIsNotPreparedAgain() {
    LightTable table =
        new LightTable(4, 4).frame("a", (p, x, y) -> 0.5f).frame("b", (p, x, y) -> 0.7f);
    StepGraph graph = table.graph();
    String rest =
        """
        - adjust: [ { cdl: { slope: 1.1, power: 0.9, saturation: 0.9 } } ]
        - { lay: b, treat: [ { power: 2 } ] }
        - adjust: [ { power: 2 } ]
        """;
    for (String opacity : List.of("1", "0.5", "0.25")) {
      List<Step> steps = table.steps("- { lay: b, opacity: " + opacity + " }\n" + rest);
      graph.build("a", steps, List.of());
    }
    assertThat(graph.prepared()).isEqualTo(2);
  }
}
