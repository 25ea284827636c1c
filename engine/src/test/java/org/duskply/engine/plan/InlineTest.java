package org.duskply.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
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

  /** A mask of one value, or one that reads the pixels around it. */
  private record Fake(List<Node> inputs, int reach, boolean cheap) implements AreaNode {
    private static final int SCRATCH = 1000;

    @Override
    public int planes() {
      return 1;
    }

    @Override
    public Region footprint(Region within) {
      return within;
    }

    @Override
    public Region needs(int index, Region out) {
      return out.grow(reach);
    }

    @Override
    public void fill(List<Planes> in, Planes out) {
      float sum = 0;
      for (Planes planes : in) {
        sum += planes.plane(0)[0];
      }
      Arrays.fill(out.plane(0), in.isEmpty() ? 0.25f : 2 * sum);
    }

    @Override
    public long scratchBytes(Region out) {
      return SCRATCH;
    }

    @Override
    public void describe(KeyWriter key) {
      key.number(reach);
    }
  }

  private static Fake outline() {
    return new Fake(List.of(), 0, true);
  }

  private static Fake soft(Node input, int reach) {
    return new Fake(List.of(input), reach, false);
  }

  private static List<Node> staged(PlanSettings settings, Node... roots) {
    return Plan.of(List.of(roots), settings).stages().stream().map(Stage::node).toList();
  }

  @Test
  void anOutlineBelowANeighbourhoodIsNoStage() {
    Fake soft = soft(outline(), 8);
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
    Fake outline = outline();
    assertThat(staged(ALL, soft(outline, 8), soft(outline, 4))).hasSize(3).contains(outline);
  }

  @Test
  void whatIsWantedItselfIsAStage() {
    Fake outline = outline();
    assertThat(staged(ALL, outline, soft(outline, 8))).hasSize(2);
  }

  @Test
  void whatIsNotCheapIsMadeOnce() {
    Fake dear = new Fake(List.of(), 0, false);
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
    assertThat(stage.scratchBytes(out)).isEqualTo(2 * Fake.SCRATCH + Planes.bytes(out.grow(8), 1));
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
