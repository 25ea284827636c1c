package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Map;
import org.duskply.engine.colour.IccException.Reason;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;

/** Profiles that lie, end early or are of another kind: each with its reason and its sentence. */
class IccReaderTrapsTest {
  private static final byte[] GAMMA = ProfileBytes.curv(0x0233);

  private static ProfileBytes sound() {
    return ProfileBytes.rgb().curves(GAMMA);
  }

  private static void assertRefused(byte[] profile, Reason reason, String sentence) {
    IccException refusal = catchThrowableOfType(IccException.class, () -> IccReader.read(profile));
    assertThat(refusal).as("must be refused: %s", sentence).isNotNull();
    assertThat(refusal.reason()).isEqualTo(reason);
    assertThat(refusal).hasMessage(sentence);
  }

  private static byte[] with(byte[] profile, int at, int number) {
    ByteBuffer.wrap(profile).putInt(at, number);
    return profile;
  }

  @Test
  void soundToBeginWith() {
    assertThat(IccReader.read(sound().bytes()).named()).isNull();
  }

  @Test
  void somethingElse() {
    String sentence = "The colour profile is not an ICC profile: its mark is missing.";
    assertRefused(new byte[0], Reason.NOT_A_PROFILE, sentence);
    assertRefused(new byte[131], Reason.NOT_A_PROFILE, sentence);
    assertRefused(new byte[5000], Reason.NOT_A_PROFILE, sentence);
  }

  @Test
  void cutShortAtEveryLength() {
    byte[] profile = sound().bytes();
    for (int length = 132; length < profile.length; length++) {
      assertRefused(
          Arrays.copyOf(profile, length),
          Reason.CUT_SHORT,
          "The colour profile is cut short: it should have "
              + profile.length
              + " bytes and has "
              + length
              + ".");
    }
  }

  @Test
  void aSizeOfFourBillion() {
    assertRefused(
        with(sound().bytes(), 0, -1),
        Reason.CUT_SHORT,
        "The colour profile is cut short: it should have 4294967295 bytes and has 368.");
  }

  @Test
  void aSizeBelowTheHeader() {
    assertRefused(
        with(sound().bytes(), 0, 100),
        Reason.DAMAGED,
        "The colour profile is damaged: its table of 8 entries passes its end.");
  }

  @Test
  void tooLong() {
    byte[] profile = Arrays.copyOf(sound().bytes(), IccReader.MAX_BYTES + 1);
    assertRefused(
        profile,
        Reason.TOO_LARGE,
        "The colour profile is longer than 33554432 bytes, the most that is read.");
  }

  @Test
  void fourBillionTags() {
    assertRefused(
        with(sound().bytes(), 128, -1),
        Reason.TOO_LARGE,
        "The colour profile claims 4294967295 entries, more than the 1024 that are read.");
    assertRefused(
        with(sound().bytes(), 128, 1024),
        Reason.DAMAGED,
        "The colour profile is damaged: its table of 1024 entries passes its end.");
  }

  @Test
  void aTagBeyondTheEnd() {
    String sentence =
        "The colour profile is damaged: its entry gXYZ passes the end of the profile.";
    byte[] profile = sound().bytes();
    int entry = ProfileBytes.entry(profile, "gXYZ");
    assertRefused(with(profile.clone(), entry + 4, profile.length), Reason.DAMAGED, sentence);
    assertRefused(with(profile.clone(), entry + 4, -1), Reason.DAMAGED, sentence);
    assertRefused(with(profile.clone(), entry + 8, -1), Reason.DAMAGED, sentence);
    assertRefused(with(profile.clone(), entry + 8, Integer.MAX_VALUE), Reason.DAMAGED, sentence);
  }

  @Test
  void aTagTooSmallOrOfAnotherType() {
    byte[] profile = sound().bytes();
    int entry = ProfileBytes.entry(profile, "gXYZ");
    assertRefused(
        with(profile.clone(), entry + 8, 19),
        Reason.DAMAGED,
        "The colour profile is damaged: its entry gXYZ has 19 bytes, too few.");
    assertRefused(
        sound().tag("gXYZ", ProfileBytes.adaptation(1, 1, 1)).bytes(),
        Reason.DAMAGED,
        "The colour profile is damaged: its entry gXYZ is not a colour.");
    assertRefused(
        sound().tag("gTRC", ProfileBytes.xyz(1, 1, 1)).bytes(),
        Reason.DAMAGED,
        "The colour profile is damaged: its entry gTRC is not a tone curve.");
  }

  @Test
  void aMissingTag() {
    for (String tag : new String[] {"rXYZ", "bXYZ", "rTRC", "gTRC"}) {
      assertRefused(
          sound().without(tag).bytes(),
          Reason.DAMAGED,
          "The colour profile is damaged: its entry " + tag + " is missing.");
    }
    assertRefused(
        ProfileBytes.grey().bytes(),
        Reason.DAMAGED,
        "The colour profile is damaged: its entry kTRC is missing.");
  }

  @Test
  void overlappingTagsAreReadForWhatTheyAre() {
    byte[] profile = sound().bytes();
    int red = ByteBuffer.wrap(profile).getInt(ProfileBytes.entry(profile, "rXYZ") + 4);
    byte[] overlapping = with(profile.clone(), ProfileBytes.entry(profile, "gXYZ") + 4, red);
    assertRefused(
        overlapping,
        Reason.DAMAGED,
        "The colour profile is damaged: its primaries cannot make white.");
    byte[] shared = with(profile.clone(), ProfileBytes.entry(profile, "desc") + 4, red);
    assertThat(IccReader.read(shared).curve(0)).isEqualTo(TransferCurve.gamma(563 / 256.0));
  }

  @Test
  void damageInATagThatIsNotNeededDoesNoHarm() {
    byte[] profile = sound().bytes();
    assertThat(IccReader.read(with(profile, ProfileBytes.entry(profile, "desc") + 4, -1)).named())
        .isNull();
  }

  @Test
  void curvesThatEndEarlyOrClaimTooMuch() {
    byte[] table = ProfileBytes.curv(0, 30000, 65535);
    assertRefused(
        sound().tag("rTRC", with(table.clone(), 8, 4)).bytes(),
        Reason.DAMAGED,
        "The colour profile is damaged: its entry rTRC ends before its samples do.");
    assertRefused(
        sound().tag("rTRC", with(table.clone(), 8, -1)).bytes(),
        Reason.TOO_LARGE,
        "The colour profile has a tone curve of 4294967295 samples, more than the 65536 that are"
            + " read.");
    assertRefused(
        sound().tag("rTRC", ProfileBytes.para(3, 2.4, 1, 0, 0.5)).bytes(),
        Reason.DAMAGED,
        "The colour profile is damaged: its entry rTRC ends before its numbers do.");
    assertRefused(
        sound().tag("rTRC", ProfileBytes.para(5, 1, 1, 1, 1, 1, 1, 1)).bytes(),
        Reason.DAMAGED,
        "The colour profile is damaged: its entry rTRC has an unknown formula.");
  }

  @Test
  void curvesThatDoNotRise() {
    byte[][] level = {
      ProfileBytes.curv(500, 500),
      ProfileBytes.curv(65535, 0),
      ProfileBytes.para(1, 2, 0, 0.5),
      ProfileBytes.para(3, 2, 1, 0, -1, 0.5),
      ProfileBytes.para(3, 2, 1, -2, 0, 0)
    };
    for (byte[] curve : level) {
      assertRefused(
          sound().curves(curve).bytes(),
          Reason.DAMAGED,
          "The colour profile is damaged: its entry rTRC does not rise from black to white.");
    }
    assertRefused(
        sound().curves(ProfileBytes.para(1, 16, 2, 0)).bytes(),
        Reason.DAMAGED,
        "The colour profile is damaged: its entry rTRC gives impossible amounts of light.");
  }

  @Test
  void gammasNoPictureHas() {
    byte[][] curves = {
      ProfileBytes.curv(0),
      ProfileBytes.curv(0xFFFF),
      ProfileBytes.para(0, -1),
      ProfileBytes.para(0, 0),
      ProfileBytes.para(3, 0.01, 1, 0, 1, 0)
    };
    for (byte[] curve : curves) {
      assertRefused(
          sound().curves(curve).bytes(),
          Reason.DAMAGED,
          "The colour profile is damaged: its entry rTRC has an impossible gamma.");
    }
  }

  @Test
  void primariesThatCannotMakeWhite() {
    String sentence = "The colour profile is damaged: its primaries cannot make white.";
    byte[] nothing = ProfileBytes.xyz(0, 0, 0);
    byte[] inverted = ProfileBytes.xyz(-1, -1, -1);
    assertRefused(sound().tag("gXYZ", nothing).bytes(), Reason.DAMAGED, sentence);
    assertRefused(
        sound().tag("rXYZ", nothing).tag("gXYZ", nothing).tag("bXYZ", nothing).bytes(),
        Reason.DAMAGED,
        sentence);
    assertRefused(sound().tag("gXYZ", inverted).bytes(), Reason.DAMAGED, sentence);
  }

  @Test
  void aSingularAdaptationCountsAsNone() {
    byte[] profile = sound().tag("chad", ProfileBytes.adaptation(new double[9])).bytes();
    assertThat(IccReader.read(profile).white()[2]).isBetween(0.8248, 0.8250);
  }

  @Test
  void otherKinds() {
    assertRefused(
        sound().header(16, "Lab ").bytes(),
        Reason.OTHER_KIND,
        "The colour profile describes Lab, not RGB or grey.");
    assertRefused(
        sound().header(16, "\n\u0007%s").bytes(),
        Reason.OTHER_KIND,
        "The colour profile describes another colour model, not RGB or grey.");
    assertRefused(
        sound().header(12, "link").bytes(),
        Reason.OTHER_KIND,
        "The colour profile does not describe a picture's colours: it is a link, an effect or a"
            + " list of named colours.");
    assertRefused(
        sound().header(8, 0x05000000).bytes(),
        Reason.OTHER_KIND,
        "The colour profile is of version 5; versions 2 to 4 are read.");
  }

  @Test
  void neitherPrimariesNorTables() {
    String sentence = "The colour profile is damaged: it has neither primaries nor tables.";
    assertRefused(sound().header(16, "CMYK").bytes(), Reason.DAMAGED, sentence);
    assertRefused(
        sound().header(20, "Lab ").bytes(),
        Reason.OTHER_KIND,
        "The colour profile works by curves that lead to no amounts of light.");
  }

  /** Each way a table of colours can lie about itself. */
  @Test
  void tablesThatLie() {
    byte[] sound = LookUpBytes.lut16(3, 2, (axis, channel) -> axis[channel]);
    assertTable(new byte[64], "has another number of colours");
    assertTable(Arrays.copyOf(sound, sound.length - 8), "ends before its numbers do");
    assertTable(poke(sound, 10, 255), "ends before its numbers do");
    assertTable(poke(sound, 10, 0), "has a grid that cannot be");
    assertTable(poke(sound, 8, 4), "has another number of colours than the header says");
    assertTable(poke(sound, 48, 0, 1), "has curves of 1 samples");
    assertTable(poke(sound, 50, 255, 255), "has curves of 65535 samples");
    byte[] staged = LookUpBytes.staged(3, 2, (axis, channel) -> axis[channel], 2.2);
    assertTable(poke(staged, 12, 127), "ends before its numbers do");
    assertTable(poke(staged, 24, 127), "ends before its numbers do");
    assertTable(poke(staged, 28, 0, 0, 0, 24), "has a curve of an unknown kind");
  }

  private static byte[] poke(byte[] table, int at, int... bytes) {
    byte[] changed = table.clone();
    for (int i = 0; i < bytes.length; i++) {
      changed[at + i] = (byte) bytes[i];
    }
    return changed;
  }

  private static void assertTable(byte[] table, String how) {
    byte[] profile = LookUpBytes.profile("RGB ", "Lab ", Map.of("A2B0", table));
    assertThatThrownBy(() -> IccReader.read(profile))
        .isInstanceOf(IccException.class)
        .message()
        .startsWith("The colour profile is damaged: its entry A2B0 " + how);
  }

  @Test
  void theLongestCurveIsRead() {
    TransferCurve srgb = ColourSpace.of(NamedSpace.SRGB).curve(0);
    byte[] curve = ProfileBytes.curv(srgb, IccReader.MAX_CURVE_SAMPLES);
    assertThat(IccReader.read(sound().curves(curve).bytes()).named()).isEqualTo(NamedSpace.SRGB);
  }
}
