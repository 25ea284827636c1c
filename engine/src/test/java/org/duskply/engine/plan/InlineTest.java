package org.duskply.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.pixel.Runs;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Which nodes are made on the way by the one that reads them. */
class InlineTest {
  private static final PlanSettings ALL = new PlanSettings(16, 50, true);

  private static FakeMask outline() {
    return new FakeMask(List.of(), 0, true);
  }

  private static FakeMask soft(Node input, int reach) {
    return new FakeMask(List.of(input), reach, false);
  }

  private static List<Node> staged(PlanSettings settings, Node... roots) {
    return Plan.of(List.of(roots), settings).stages().stream().map(Stage::node).toList();
  }

  @Test
  void anOutlineBelowANeighbourhoodIsNoStage() {
    FakeMask soft = soft(outline(), 8);
    assertThat(staged(ALL, soft)).containsExactly(soft);
    assertThat(staged(ALL.without(Rule.INLINE), soft)).hasSize(2);
  }

  @Test
  void oneThatReachesOverManyBandsLetsItBeMadeOnce() {
    assertThat(staged(ALL, soft(outline(), 16 * 16))).hasSize(1);
    assertThat(staged(ALL, soft(outline(), 16 * 16 + 1))).hasSize(2);
  }

  @Test
  void whatSeveralReadIsMadeOnce() {
    FakeMask outline = outline();
    assertThat(staged(ALL, soft(outline, 8), soft(outline, 4))).hasSize(3).contains(outline);
  }

  @Test
  void whatIsWantedItselfIsAStage() {
    FakeMask outline = outline();
    assertThat(staged(ALL, outline, soft(outline, 8))).hasSize(2);
  }

  @Test
  void whatIsNotCheapIsMadeOnce() {
    FakeMask dear = new FakeMask(List.of(), 0, false);
    assertThat(staged(ALL, soft(dear, 8))).hasSize(2);
  }

  /** It is filled from the value below, asks for no stage, and its room is accounted for. */
  @Test
  void itIsMadeInTheRoomOfItsReader() {
    Stage stage = Plan.of(List.of(soft(outline(), 8)), ALL).stages().get(0);
    Region out = Region.ofSize(10, 16);
    List<Region> asked = new ArrayList<>();
    stage.needs(
        out,
        new StageNeeds() {
          @Override
          public void frame(int frame, Region part) {
            asked.add(part);
          }

          @Override
          public void stage(int stage, Region part) {
            asked.add(part);
          }
        });
    assertThat(asked).isEmpty();
    Planes made = new Planes(out, 1);
    stage.fill(new Nothing(), made, Stop.NEVER);
    assertThat(made.plane(0)).containsOnly(0.5f);
    assertThat(stage.scratchBytes(out))
        .isEqualTo(2 * FakeMask.SCRATCH + Planes.bytes(out.grow(8), 1));
  }

  private static final class Nothing implements StageInputs {
    @Override
    public Samples samples(int frame, int y) {
      throw new AssertionError();
    }

    @Override
    public @Nullable Planes planes(int stage, int y) {
      throw new AssertionError();
    }

    @Override
    public @Nullable Runs runs(int stage, int y) {
      throw new AssertionError();
    }

    @Override
    public Planes block(int stage, Region part) {
      throw new AssertionError();
    }
  }
}
