package org.duskply.engine.step;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.LightTable;
import org.junit.jupiter.api.Test;

/** Treating a group treats the light that it adds: {@code b + T(max(0, g − b)) − max(0, b − g)}. */
class AddedLightTest {
  private static final double[] DUSK = {0.1, 0.2, 0.3};
  private static final double[] FLASH = {0.5, 0.4, 0.2};

  private static LightTable table() {
    return new LightTable(4, 1)
        .frame("dusk", (x, y, c) -> DUSK[c])
        .frame("flash", (x, y, c) -> FLASH[c]);
  }

  private static float[] pixel(String steps, int x) {
    return LightTable.pixel(table().picture(steps), x, 0);
  }

  /** The pop adds (0.4, 0.2, 0) to the dusk; half as much light is a stop less. */
  @Test
  void theAddedLightAloneIsTreated() {
    float[] got = pixel("  - { group: [{ pop: flash }], treat: [{ exposure: -1 }] }", 0);
    Close.check("relit", got, new double[] {0.3, 0.3, 0.3}, 4 * 0x1p-24);
  }

  @Test
  void whatIsTakenAwayIsTakenAway() {
    float[] got = pixel("  - { group: [{ lay: flash }], treat: [{ exposure: -1 }] }", 0);
    Close.check("relit", got, new double[] {0.3, 0.3, 0.2}, 4 * 0x1p-24);
  }

  @Test
  void treatmentsThatMixChannelsSeeTheAddedLight() {
    // Grey of the added light (0.4, 0.2, 0) is the same in all channels: 0 would be no colour.
    float[] got = pixel("  - { group: [{ pop: flash }], treat: [{ saturation: 0 }] }", 0);
    float added = got[0] - 0.1f;
    assertThat(got[1] - 0.2f).isCloseTo(added, org.assertj.core.api.Assertions.within(1e-6f));
    assertThat(got[2] - 0.3f).isCloseTo(added, org.assertj.core.api.Assertions.within(1e-6f));
    assertThat(added).isBetween(0.2f, 0.25f);
  }

  @Test
  void onlyWhereTheGroupShows() {
    String mask = "mask: { polygon: \"0,0 2,0 2,1 0,1\" }";
    Planes got =
        table().picture("  - { group: [{ pop: flash }], treat: [{ exposure: -1 }], " + mask + " }");
    assertThat(LightTable.pixel(got, 2, 0)).isEqualTo(new float[] {0.1f, 0.2f, 0.3f});
    Close.check("shown", LightTable.pixel(got, 1, 0), new double[] {0.3, 0.3, 0.3}, 4 * 0x1p-24);
  }

  @Test
  void whereItsStepsDoNothingTheBitsStay() {
    String mask = "mask: { polygon: \"0,0 2,0 2,1 0,1\" }";
    Planes got =
        table()
            .picture(
                "  - { group: [{ pop: flash, "
                    + mask
                    + " }], treat: [{ contrast: 0.3 }, { saturation: 1.3 }, { exposure: 0.7 }] }");
    assertThat(LightTable.pixel(got, 3, 0)).isEqualTo(new float[] {0.1f, 0.2f, 0.3f});
    assertThat(LightTable.pixel(got, 0, 0)[0]).isGreaterThan(0.1f);
  }

  @Test
  void treatmentsThatChangeNothingLeaveTheVeryGroup() {
    float[] plain = pixel("  - { group: [{ pop: flash, opacity: 0.3 }] }", 0);
    float[] treated =
        pixel(
            "  - { group: [{ pop: flash, opacity: 0.3 }], treat: [{ exposure: 0 }, { power: 1 }] }",
            0);
    assertThat(treated).isEqualTo(plain);
  }

  @Test
  void groupsInGroupsTreatWhatTheyAddThemselves() {
    float[] got =
        pixel(
            "  - { group: [{ dodge: 1 }, { group: [{ pop: flash }], treat: [{ exposure: -1 }] }],"
                + " treat: [{ exposure: 1 }] }",
            0);
    // Dodge: (0.2, 0.4, 0.6). The pop adds (0.3, 0, 0), of which half: g = (0.35, 0.4, 0.6). The
    // outer group adds (0.25, 0.2, 0.3), twice that.
    Close.check("nested", got, new double[] {0.6, 0.6, 0.9}, 8 * 0x1p-24);
  }
}
