package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.duskply.recipe.NamedSpace;

/**
 * Sound profiles with a few bytes changed, by kind of place: the header, the tag table, the data.
 * Whatever comes of it is a space with usable numbers or the typed refusal.
 */
class IccFuzzTest {
  private static final List<byte[]> SOUND =
      List.of(
          IccWriter.profile(NamedSpace.SRGB),
          IccWriter.profile(NamedSpace.A98_RGB),
          ProfileBytes.rgb()
              .curves(ProfileBytes.curv(TransferCurve.gamma(1.9), 37))
              .tag("chad", ProfileBytes.adaptation(1.05, 0.02, -0.05, 0.03, 1, 0, 0, 0.01, 0.75))
              .bytes(),
          ProfileBytes.rgb().curves(ProfileBytes.para(4, 2.2, 1, 0, 0.1, 0.05, 0, 0)).bytes(),
          ProfileBytes.grey().tag("kTRC", ProfileBytes.curv(0x01CD)).bytes());

  private static final LookUpBytes.Colour ALIKE = (axis, c) -> axis[0];

  private static final int[] EDGES = {
    0, 1, -1, 2, 127, 128, 131, 132, 0x7FFFFFFF, 0x80000000, 0xFFFF, 0x10000, 0xFFFFFFF0
  };

  @Provide
  Arbitrary<byte[]> damaged() {
    return Arbitraries.longs().map(seed -> damage(SOUND, new Random(seed)));
  }

  private static byte[] damage(List<byte[]> sound, Random random) {
    byte[] profile = sound.get(random.nextInt(sound.size())).clone();
    int tableEnd = 132 + 12 * ByteBuffer.wrap(profile).getInt(128);
    int changes = 1 + random.nextInt(4);
    for (int i = 0; i < changes; i++) {
      int kind = random.nextInt(4);
      int from = kind == 0 ? 0 : kind == 1 ? 128 : tableEnd;
      int to = kind == 0 ? 128 : kind == 1 ? tableEnd : profile.length;
      int at = from + random.nextInt(to - from);
      int word = Math.min(at & ~3, profile.length - 4);
      switch (random.nextInt(3)) {
        case 0 -> profile[at] = (byte) random.nextInt(256);
        case 1 -> profile[at] ^= (byte) (1 << random.nextInt(8));
        default -> ByteBuffer.wrap(profile).putInt(word, EDGES[random.nextInt(EDGES.length)]);
      }
    }
    boolean cut = random.nextInt(8) == 0;
    return cut ? Arrays.copyOf(profile, random.nextInt(profile.length)) : profile;
  }

  @Property(seed = "20", tries = 2500)
  void isReadOrRefused(@ForAll("damaged") byte[] profile) {
    ColourSpace space;
    try {
      space = IccReader.read(profile);
    } catch (IccException refusal) {
      assertThat(refusal.getMessage()).startsWith("The colour profile").endsWith(".");
      assertThat(refusal.getMessage()).matches("[ -~]*").hasSizeLessThan(140);
      return;
    }
    for (double number : ColourSpace.matrix(space, ColourSpace.of(NamedSpace.SRGB))) {
      assertThat(number).isFinite();
    }
    for (int channel = 0; channel < 3; channel++) {
      TransferCurve curve = space.curve(channel);
      for (double v : new double[] {-2, -1, 0, 1e-9, 0.3, 0.5, 1, 1.5}) {
        assertThat(curve.toLinear(v)).isFinite();
        assertThat(curve.toEncoded(v)).isFinite();
      }
    }
  }

  private static final List<byte[]> TABLES =
      List.of(
          LookUpBytes.profile("CMYK", "Lab ", Map.of("A2B0", LookUpBytes.lut8(4, 2, ALIKE))),
          LookUpBytes.profile("RGB ", "Lab ", Map.of("A2B1", LookUpBytes.lut16(3, 3, ALIKE))),
          LookUpBytes.profile(
              "RGB ", "XYZ ", Map.of("A2B0", LookUpBytes.staged(3, 2, ALIKE, 2.2))));

  @Provide
  Arbitrary<byte[]> damagedTables() {
    return Arbitraries.longs().map(seed -> damage(TABLES, new Random(seed)));
  }

  /** Look-up tables give usable light at every device value, whatever the numbers in them. */
  @Property(seed = "22", tries = 500)
  void tablesAreReadOrRefused(@ForAll("damagedTables") byte[] profile) {
    ColourSpace space;
    try {
      space = IccReader.read(profile);
    } catch (IccException refusal) {
      assertThat(refusal.getMessage()).startsWith("The colour profile").endsWith(".");
      assertThat(refusal.getMessage()).matches("[ -~]*").hasSizeLessThan(140);
      return;
    }
    LookUpTables tables = space.tables();
    if (tables == null) {
      return;
    }
    float[] values = {-1, 0, 0.25f, 0.999f, 1, 2, Float.NaN};
    float[][] device = new float[tables.channels()][];
    Arrays.fill(device, values);
    float[][] light = new float[3][values.length];
    tables.run(device, 0, values.length, light[0], light[1], light[2], 0);
    for (float[] plane : light) {
      for (float value : plane) {
        assertThat(value).isFinite();
      }
    }
  }

  /** A curve of ten million samples would be 80 MB, and there may be ten of them. */
  @Property(tries = 1)
  void curvesOfStagedTablesHaveTheirLimit() {
    byte[] table = LookUpBytes.staged(3, 2, ALIKE, 2.2);
    int more = 2 * (IccReader.MAX_CURVE_SAMPLES + 1);
    ByteBuffer large = ByteBuffer.allocate(table.length + 12 + 3 * more).put(table);
    large.putInt(12, table.length).put("curv".getBytes(StandardCharsets.US_ASCII));
    large.putInt(0).putInt(IccReader.MAX_CURVE_SAMPLES + 1);
    byte[] profile = LookUpBytes.profile("RGB ", "XYZ ", Map.of("A2B0", large.array()));
    assertThatThrownBy(() -> IccReader.read(profile))
        .isInstanceOf(IccException.class)
        .hasMessageContaining("curves of 65537 samples");
  }

  @Property(seed = "21", tries = 500)
  void noiseIsRefused(@ForAll byte[] noise) {
    try {
      IccReader.read(noise);
      throw new AssertionError("noise was read as a profile");
    } catch (IccException refusal) {
      assertThat(refusal.reason()).isEqualTo(IccException.Reason.NOT_A_PROFILE);
    }
  }
}
