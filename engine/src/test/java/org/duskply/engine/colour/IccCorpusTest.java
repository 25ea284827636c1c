package org.duskply.engine.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.duskply.engine.colour.IccException.Reason;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Public collections of profiles by others: compact ones in versions 2 and 4, and the test data of
 * a colour engine. They are not part of the project; the property {@code duskply.corpus} says where
 * they are, and without them these tests are skipped.
 */
class IccCorpusTest {
  private static final Path FOLDER =
      Path.of(System.getProperty("duskply.corpus", "../../shared/corpus"), "color", "icc");

  @BeforeEach
  void there() {
    assumeTrue(
        Files.isDirectory(FOLDER),
        "SKIPPED: no profiles of others to read; set -Dduskply.corpus=FOLDER to test with them");
  }

  private static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static ColourSpace read(String name) {
    return IccReader.read(bytes(FOLDER.resolve(name)));
  }

  private static List<Path> named(String pattern) throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files.filter(f -> f.getFileName().toString().matches(pattern)).sorted().toList();
    }
  }

  @Test
  void everyCompactRgbAndGreyProfileIsRead() throws IOException {
    List<Path> profiles = named("(?!CGATS).*-(v2|v4)(-magic|-micro|-nano)?\\.icc");
    assertThat(profiles).hasSizeGreaterThan(40);
    for (Path profile : profiles) {
      ColourSpace space = IccReader.read(bytes(profile));
      assertThat(space.grey()).isEqualTo(profile.getFileName().toString().startsWith("sGrey"));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "sRGB-v2-nano.icc, SRGB",
    "sRGB-v2-micro.icc, SRGB",
    "sRGB-v2-magic.icc, SRGB",
    "sRGB-v4.icc, SRGB",
    "DisplayP3-v2-micro.icc, DISPLAY_P3",
    "DisplayP3-v2-magic.icc, DISPLAY_P3",
    "DisplayP3-v4.icc, DISPLAY_P3",
    "ProPhoto-v2-micro.icc, PROPHOTO_RGB",
    "ProPhoto-v2-magic.icc, PROPHOTO_RGB",
    "ProPhoto-v4.icc, PROPHOTO_RGB",
    "Rec2020-v2-micro.icc, REC2020",
    "Rec2020-v2-magic.icc, REC2020",
    "Rec2020-v4.icc, REC2020",
    "sRGB_IEC61966-2-1_black_scaled.icc, SRGB",
    "test5.icc, SRGB"
  })
  void isTheNamedSpace(String file, NamedSpace name) {
    assertThat(read(file)).isSameAs(ColourSpace.of(name));
  }

  @Test
  void theTwoOfThePrimariesAndPowerOfA98AreA98() throws IOException {
    long found =
        named(".*\\.icc").stream()
            .filter(
                f -> {
                  try {
                    return IccReader.read(bytes(f)).named() == NamedSpace.A98_RGB;
                  } catch (IccException refused) {
                    return false;
                  }
                })
            .count();
    assertThat(found).isEqualTo(2);
  }

  /** Other curves, other primaries, or columns held to 0 and above: their own numbers count. */
  @ParameterizedTest
  @CsvSource({
    "scRGB-v2.icc",
    "Rec709-v4.icc",
    "Rec601PAL-v2-magic.icc",
    "Rec2020-g24-v4.icc",
    "DCI-P3-v4.icc",
    "DisplayP3Compat-v4.icc"
  })
  void isASpaceOfItsOwn(String file) {
    ColourSpace space = read(file);
    assertThat(space.named()).isNull();
    assertThat(space.white()[1]).isBetween(1 - 1e-12, 1 + 1e-12);
  }

  /** Named after crayons, yet its numbers are those of sRGB. */
  @Test
  void aNameDoesNotCount() {
    assertThat(read("crayons.icc").named()).isEqualTo(NamedSpace.SRGB);
  }

  /**
   * Against LittleCMS. Inside a cell of a grid of four axes ICC leaves open how to go between its
   * corners: we walk a simplex, LittleCMS mixes two tetrahedra along the first axis. The two differ
   * by at most a quarter of a cell's mixed difference, here up to 0.012 of light in the coarse
   * grid.
   */
  @ParameterizedTest
  @CsvSource({
    "test1.icc, 4, 4.3e-3",
    "test3.icc, 3, 1.3e-3",
    "CGATS001Compat-v2-micro.icc, 4, 4.3e-3",
    "sRGB_v4_ICC_preference.icc, 3, 1.3e-3"
  })
  void isReadAsTables(String file, int channels, double bound) {
    LookUpTables tables = read(file).tables();
    assertThat(tables).isNotNull();
    assertThat(tables.channels()).isEqualTo(channels);
    LookUpTablesTest.agrees(bytes(FOLDER.resolve(file)), bound);
  }

  @ParameterizedTest
  @CsvSource({"bad.icc, NOT_A_PROFILE", "bad_mpe.icc, CUT_SHORT", "toosmall.icc, CUT_SHORT"})
  void isRefusedWithASentence(String file, Reason reason) {
    byte[] profile = bytes(FOLDER.resolve(file));
    IccException refusal = catchThrowableOfType(IccException.class, () -> IccReader.read(profile));
    assertThat(refusal).as(file).isNotNull();
    assertThat(refusal.reason()).isEqualTo(reason);
    assertThat(refusal.getMessage()).startsWith("The colour profile ").endsWith(".");
  }
}
