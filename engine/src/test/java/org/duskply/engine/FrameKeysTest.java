package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import net.imglib2.img.array.ArrayImgs;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.GelMatrix;
import org.duskply.engine.colour.IccWriter;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.PictureBits;
import org.duskply.engine.testing.Pictures;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.Coverage;
import org.duskply.recipe.Frame;
import org.duskply.recipe.Match;
import org.duskply.recipe.MatchBy;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.Problem;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.RecipeException;
import org.duskply.recipe.RecipeReader;
import org.duskply.recipe.adjust.Gel;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the keys of a frame do to its light. */
class FrameKeysTest {
  private static final ColourSpace SRGB = ColourSpace.of(NamedSpace.SRGB);
  private static final int SIDE = 8;

  @TempDir Path folder;
  private Desk desk;
  private int runs;

  @BeforeEach
  void desk() {
    desk = new Desk(folder, SIDE, SIDE);
    desk.frame("dusk.tif", 1);
  }

  /** A frame of even grey with a camera's record; 0 leaves a setting out. */
  private void shot(String name, int code, double seconds, double fNumber, int iso) {
    TiffFile file = new TiffFile(SIDE, SIDE, 3, 16, (x, y, c) -> code);
    if (seconds > 0) {
      long thousands = Math.round(seconds * 1000);
      file.camera(33434, 5, 1, file.rational(thousands, 1000));
    }
    if (fNumber > 0) {
      file.camera(33437, 5, 1, file.rational(Math.round(fNumber * 10), 10));
    }
    if (iso > 0) {
      file.camera(34855, 3, 1, new byte[] {(byte) iso, (byte) (iso >> 8)});
    }
    desk.write(name, file.bytes());
  }

  /** The picture that is one frame laid over the base. */
  private Planes laid(String frames) {
    return laid(frames, Map.of());
  }

  private Planes laid(String frames, Map<String, MemoryFrame> memory) {
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite =
            engine.open(RecipeReader.read(recipe(frames)), folder, View.WHOLE, memory)) {
      return Pictures.planes(composite.image());
    }
  }

  private Path recipe(String frames) {
    return recipe(frames, "{ lay: f }");
  }

  private Path recipe(String frames, String steps) {
    return desk.recipe(
        "duskply: 1\nbase: dusk\nframes:\n  dusk: dusk.tif\n"
            + frames
            + "steps: [ "
            + steps
            + " ]\n");
  }

  private List<Problem> problems(String frames) {
    try (Engine engine = Engine.builder().threads(1).build()) {
      return catchThrowableOfType(RecipeException.class, () -> engine.open(recipe(frames)))
          .problems()
          .stream()
          .filter(p -> !p.isNotice())
          .toList();
    }
  }

  private static double light(int code) {
    return SRGB.curve(0).toLinear(code / 65535.0);
  }

  // content keys

  /**
   * One engine keeps what it made; a frame stands in it under all that says how it is read, the
   * working space of a base with a profile of its own among it.
   */
  @Test
  void whatIsKeptIsToldApartByHowAFrameIsRead() {
    desk.write(
        "f.tif", new TiffFile(SIDE, SIDE, 4, 16, (x, y, c) -> 20_000).shorts(338, 2).bytes());
    desk.write("s.tif", new TiffFile(SIDE, SIDE, 3, 16, (x, y, c) -> 9_000 + 9_000 * c).bytes());
    shot("a.tif", 10_000, 1, 8, 100);
    shot("b.tif", 10_000, 0.25, 8, 100);
    ownSpace("one.tif", 0.02);
    ownSpace("two.tif", 0.05);
    List<String> ways =
        List.of(
            "  f: f.tif\n",
            "  f: { file: f.tif, coverage: ignore }\n",
            "  f: { file: f.tif, reads-as: linear }\n",
            "  f: { file: f.tif, gel: -42 }\n",
            "  f: { file: f.tif, exposure: 1 }\n",
            "  f: { file: f.tif, profile: display-p3 }\n",
            "  f: s.tif\n",
            "  a: a.tif\n  f: { file: b.tif, match: { frame: a, by: exif } }\n",
            "  f: b.tif\n");
    try (Engine keeping = Engine.builder().threads(1).keep(1 << 24).build()) {
      for (String base : List.of("dusk.tif", "one.tif", "two.tif")) {
        for (String way : ways) {
          Path recipe =
              desk.recipe(
                  "duskply: 1\nbase: dusk\nframes:\n  dusk: "
                      + base
                      + "\n"
                      + way
                      + "steps: [ { lay: f }, { adjust: [ { saturation: 1.5 } ] } ]\n"
                      + "deliverables: { print: p.tif }\n");
          try (Engine fresh = Engine.builder().threads(1).build()) {
            assertThat(delivered(keeping, recipe))
                .as(base + way)
                .isEqualTo(delivered(fresh, recipe));
          }
        }
      }
    }
  }

  private byte[] delivered(Engine engine, Path recipe) {
    try (Composite composite = engine.open(recipe)) {
      Path out = folder.resolve("out-" + runs++);
      return Pictures.bytes(
          composite.deliver(out, Set.of(), Progress.SILENT).files().get(0).path());
    }
  }

  /** A base in the profile of sRGB with some X of green given to red: the white stays. */
  private void ownSpace(String name, double moved) {
    byte[] profile = IccWriter.profile(NamedSpace.SRGB);
    addToFirst(profile, "rXYZ", moved);
    addToFirst(profile, "gXYZ", -moved);
    desk.write(
        name,
        new TiffFile(SIDE, SIDE, 3, 16, (x, y, c) -> 8_000 + 300 * x)
            .raw(34675, 7, profile.length, profile)
            .bytes());
  }

  /** Changes the first number of an XYZ tag (ICC.1:2010, 7.3 and 10.27). */
  private static void addToFirst(byte[] profile, String tag, double x) {
    ByteBuffer in = ByteBuffer.wrap(profile);
    for (int entry = 132; ; entry += 12) {
      if (new String(profile, entry, 4, StandardCharsets.US_ASCII).equals(tag)) {
        int at = in.getInt(entry + 4) + 8;
        in.putInt(at, in.getInt(at) + (int) Math.round(x * 65536));
        return;
      }
    }
  }

  // match

  /**
   * Frame B got four times the light of frame A, or as much less or more as the settings say; the
   * numbers are those of APEX and ISO 2720 worked out beside CameraExposureTest. A patch of 0.0500
   * in A reads 0.2000 in B; matched, B reads as A again.
   */
  @ParameterizedTest
  @CsvSource({
    "0.25, 8, 100, 1, 8, 100, -2",
    "1, 8, 100, 0.5, 8, 400, -1",
    "2, 11, 100, 0.25, 11, 100, 3",
    "1, 8, 100, 1, 5.6, 100, -1.02915",
  })
  void matchBringsAFrameToAnothersExposure(
      double ta, double na, int sa, double tb, double nb, int sb, double stops) {
    shot("a.tif", 10_000, ta, na, sa);
    shot("b.tif", 30_000, tb, nb, sb);
    Planes matched = laid("  a: a.tif\n  f: { file: b.tif, match: { frame: a, by: exif } }\n");
    float wanted = (float) light(30_000) * (float) StrictMath.pow(2, stops);
    assertThat(matched.plane(1)[9]).isEqualTo(wanted);
    // What explain prints, written into the recipe, is the same picture.
    PictureBits.same(
        laid("  f: { file: b.tif, exposure: " + stops + " }\n"), matched, "exposure for match");
  }

  @Test
  void explainSaysHowEachFrameIsRead() {
    shot("a.tif", 10_000, 1, 5.6, 100);
    shot("b.tif", 30_000, 1, 8, 100);
    desk.write(
        "f.tif", new TiffFile(SIDE, SIDE, 4, 16, (x, y, c) -> 30_000).shorts(338, 2).bytes());
    Path recipe =
        recipe(
            "  a: { file: a.tif, gel: { from: 3000, to: 3600, plus-green: -5 } }\n"
                + "  b: { file: b.tif, match: { frame: a, by: exif }, gel: -42 }\n"
                + "  f: { file: f.tif, coverage: ignore, reads-as: linear }\n",
            "{ pop: a }, { pop: b }, { pop: f }");
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = engine.open(recipe)) {
      List<String> said =
          composite.explain().frames().stream().map(Explanation.FrameLine::description).toList();
      assertThat(said.get(1))
          .contains(
              "It was exposed for 1 s at f/5.6 and ISO 100.",
              "Its light of 3000 K becomes light of 3600 K, more magenta by 5 thousandths of CIE 1960"
                  + " uv.");
      assertThat(said.get(2))
          .contains(
              "It was exposed for 1 s at f/8 and ISO 100.",
              "It is read 1.02915 stops brighter to match a by the camera's settings, and its light is"
                  + " cooled by 42 mired.");
      assertThat(said.get(3))
          .contains("of 16 bits, with transparency that is ignored.")
          .endsWith("The recipe reads its numbers as linear light, whatever the curve.");
    }
  }

  @Test
  void theReferencesOwnExposureCountsAndSoDoesTheFramesOwn() {
    shot("a.tif", 10_000, 0.25, 8, 100);
    shot("b.tif", 30_000, 1, 8, 100);
    PictureBits.same(
        laid("  f: { file: b.tif, exposure: -1.75 }\n"),
        laid(
            "  a: { file: a.tif, exposure: 0.5 }\n"
                + "  f: { file: b.tif, exposure: -0.25, match: { frame: a, by: exif } }\n"),
        "−2 + 0.5 − 0.25");
  }

  @Test
  void aReferenceIsNotDecoded() {
    shot("b.tif", 30_000, 1, 8, 100);
    TiffFile other = new TiffFile(SIDE, SIDE, 3, 16, (x, y, c) -> 9).compression(8);
    other.damage(bytes -> new byte[] {1, 2, 3});
    desk.write(
        "a.tif",
        other
            .camera(33434, 5, 1, other.rational(1, 4))
            .camera(33437, 5, 1, other.rational(8, 1))
            .camera(34855, 3, 1, new byte[] {100, 0})
            .bytes());
    assertThat(
            laid("  a: a.tif\n  f: { file: b.tif, match: { frame: a, by: exif } }\n").plane(0)[0])
        .isEqualTo((float) light(30_000) / 4);
  }

  @Test
  void missingSettingsAreNamedAtTheirLine() {
    shot("a.tif", 10_000, 0, 8, 0);
    shot("b.tif", 30_000, 1, 0, 100);
    List<Problem> told =
        problems("  a: a.tif\n  f: { file: b.tif, match: { frame: a, by: exif } }\n");
    assertThat(told).hasSize(2).allMatch(p -> p.place().line() == 6);
    assertThat(told.get(0).sentence())
        .isEqualTo(
            "b.tif does not say with which f-number it was taken, so that exposures cannot be"
                + " matched; say the exposure in stops instead.");
    assertThat(told.get(1).sentence())
        .startsWith("a.tif does not say with which shutter time and ISO it was taken");
  }

  @Test
  void aMatchBeyondReasonIsRefused() {
    shot("a.tif", 10_000, 30, 1, 6400);
    shot("b.tif", 30_000, 0.001, 32, 50);
    assertThat(problems("  a: a.tif\n  f: { file: b.tif, match: { frame: a, by: exif } }\n"))
        .singleElement()
        .matches(p -> p.sentence().contains("more than 20 stops"));
  }

  @Test
  void aDamagedReferenceIsToldWhereItStands() {
    shot("b.tif", 30_000, 1, 8, 100);
    desk.write("a.tif", "no picture".getBytes(StandardCharsets.UTF_8));
    assertThat(problems("  a: a.tif\n  f: { file: b.tif, match: { frame: a, by: exif } }\n"))
        .singleElement()
        .matches(p -> p.path().equals("frames/a"));
  }

  /** EXIF 2.3, annex C: Tv = −log2 t, Av = 2·log2 N, where the plain numbers are not there. */
  @Test
  void apexValuesStandInForPlainOnes() {
    shot("a.tif", 10_000, 0.25, 8, 100);
    TiffFile b = new TiffFile(SIDE, SIDE, 3, 16, (x, y, c) -> 30_000);
    desk.write(
        "b.tif",
        b.camera(37377, 10, 1, b.rational(-1, 1))
            .camera(37378, 5, 1, b.rational(6, 1))
            .camera(34855, 3, 1, new byte[] {100, 0})
            .bytes());
    // 2 s at f/8 against 1/4 s: three stops.
    assertThat(
            laid("  a: a.tif\n  f: { file: b.tif, match: { frame: a, by: exif } }\n").plane(0)[0])
        .isEqualTo((float) light(30_000) / 8);
  }

  // gel

  @Test
  void aGelIsAMatrixAfterTheExposure() {
    desk.frame("f.tif", 3);
    Planes plain = laid("  f: f.tif\n");
    Planes gelled = laid("  f: { file: f.tif, exposure: 1.5, gel: 42 }\n");
    double[] m = GelMatrix.of(new Gel(42.0, null, null, 0), SRGB);
    double factor = StrictMath.pow(2, 1.5);
    for (int i = 0; i < SIDE * SIDE; i++) {
      for (int c = 0; c < 3; c++) {
        double wanted = 0;
        double most = 0;
        for (int k = 0; k < 3; k++) {
          wanted += factor * m[3 * c + k] * plain.plane(k)[i];
          most += Math.abs(factor * m[3 * c + k] * plain.plane(k)[i]);
        }
        // Three rounded coefficients and products, two sums, the factor and its product.
        Close.check("gel " + i, gelled.plane(c)[i], wanted, 10 * 0x1p-24 * Math.max(1, most));
      }
    }
    // A gel of 0 is none.
    PictureBits.same(plain, laid("  f: { file: f.tif, gel: 0 }\n"), "clear gel");
  }

  @Test
  void aGelColoursAGreyFrameAndAFrameOfOtherPrimaries() {
    desk.write("f.tif", new TiffFile(SIDE, SIDE, 1, 16, (x, y, c) -> 30_000).bytes());
    double[] m = GelMatrix.of(new Gel(null, 3000.0, 3600.0, 0), SRGB);
    Planes grey = laid("  f: { file: f.tif, gel: { from: 3000, to: 3600 } }\n");
    for (int c = 0; c < 3; c++) {
      double wanted = light(30_000) * (m[3 * c] + m[3 * c + 1] + m[3 * c + 2]);
      Close.check("grey", grey.plane(c)[0], wanted, 10 * 0x1p-24 * 4);
    }
    assertThat(grey.plane(2)[0]).isGreaterThan(grey.plane(0)[0]);

    desk.frame("f.tif", 3, NamedSpace.DISPLAY_P3);
    Planes plain = laid("  f: f.tif\n");
    Planes gelled = laid("  f: { file: f.tif, gel: { from: 3000, to: 3600 } }\n");
    for (int i = 0; i < SIDE * SIDE; i++) {
      double wanted = 0;
      double most = 1;
      for (int k = 0; k < 3; k++) {
        wanted += m[6 + k] * plain.plane(k)[i];
        most += Math.abs(m[6 + k] * plain.plane(k)[i]);
      }
      // One matrix of both against two after each other, each within a few roundings.
      Close.check("p3", gelled.plane(2)[i], wanted, 20 * 0x1p-24 * most);
    }
  }

  // reads-as

  @Test
  void linearNumbersAreLightWhateverTheProfilesCurve() {
    desk.frame("f.tif", 3);
    Planes linear = laid("  f: { file: f.tif, reads-as: linear }\n");
    assertThat(linear.plane(1)[10]).isEqualTo((float) (desk.sample(3, 2, 1, 1) / 65535.0));
    PictureBits.same(
        laid("  f: f.tif\n"), laid("  f: { file: f.tif, reads-as: encoded }\n"), "encoded");
    // Primaries count all the same.
    Planes wide = laid("  f: { file: f.tif, reads-as: linear, profile: rec2020 }\n");
    double[] m = ColourSpace.matrix(ColourSpace.of(NamedSpace.REC2020), SRGB);
    double wanted = 0;
    for (int k = 0; k < 3; k++) {
      wanted += m[k] * desk.sample(3, 2, 1, k) / 65535;
    }
    Close.check("wide", wide.plane(0)[10], wanted, 3 * 6 * 0x1p-24);
  }

  /** The same picture as whole numbers and as floats is equal only with the setting stated. */
  @Test
  void floatsWithoutAProfileAreLinearUnlessTheRecipeSaysEncoded() {
    TiffFile file =
        new TiffFile(
                SIDE,
                SIDE,
                3,
                32,
                (x, y, c) -> Float.floatToIntBits(desk.sample(3, x, y, c) / 65535f))
            .shorts(339, 3, 3, 3); // TIFF 6.0, SampleFormat: IEEE floats
    desk.write("f.tif", file.bytes());
    Planes linear = laid("  f: f.tif\n");
    assertThat(linear.plane(1)[10]).isEqualTo(desk.sample(3, 2, 1, 1) / 65535f);
    PictureBits.same(linear, laid("  f: { file: f.tif, reads-as: linear }\n"), "linear");
    Planes encoded = laid("  f: { file: f.tif, reads-as: encoded }\n");
    desk.frame("f.tif", 3);
    Planes whole = laid("  f: f.tif\n");
    for (int i = 0; i < SIDE * SIDE; i++) {
      // The stored float is rounded, and the slope of the curve is below 2.3.
      Close.check("float " + i, encoded.plane(1)[i], whole.plane(1)[i], 4 * 0x1p-24);
    }
  }

  // coverage

  @Test
  void ignoredCoverageMakesAFrameOpaqueAndFitForABase() {
    TiffFile half =
        new TiffFile(SIDE, SIDE, 4, 16, (x, y, c) -> c == 3 ? 16_384 * (x / 2) : 30_000)
            .shorts(338, 2);
    desk.write("f.tif", half.bytes());
    Planes base = laid("  f: dusk.tif\n");
    Planes used = laid("  f: f.tif\n");
    Planes ignored = laid("  f: { file: f.tif, coverage: ignore }\n");
    float light = (float) light(30_000);
    assertThat(used.plane(0)[0]).isEqualTo(base.plane(0)[0]);
    assertThat(used.plane(0)[7]).isNotEqualTo(light);
    for (float v : ignored.plane(0)) {
      assertThat(v).isEqualTo(light);
    }
    desk.write("dusk.tif", half.bytes());
    assertThat(problems("  f: f.tif\n"))
        .singleElement()
        .matches(p -> p.sentence().endsWith("or write coverage: ignore."));
    Path recipe =
        desk.recipe(
            "duskply: 1\nbase: dusk\nframes: { dusk: { file: dusk.tif, coverage: ignore } }\n");
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(recipe)) {
      assertThat(Pictures.planes(composite.image()).plane(2)[5]).isEqualTo(light);
    }
  }

  @Test
  void colourUnderIgnoredAssociatedAlphaIsStillDividedByIt() {
    desk.write("f.tif", new TiffFile(SIDE, SIDE, 4, 8, (x, y, c) -> 64).shorts(338, 1).bytes());
    Planes ignored = laid("  f: { file: f.tif, coverage: ignore }\n");
    assertThat(ignored.plane(0)[3]).isEqualTo(1f);
  }

  // before

  @Test
  void beforeIsAnotherFrameAsItIsRead() {
    desk.frame("f.tif", 3);
    desk.frame("g.tif", 4);
    String head = "duskply: 1\nbase: dusk\nframes: { dusk: dusk.tif, f: f.tif, g: g.tif }\n";
    Planes gelled;
    Planes asBase;
    try (Engine engine = Engine.builder().build();
        Composite named =
            engine.open(
                desk.recipe(
                    "duskply: 1\nbase: dusk\nbefore: g\n"
                        + "frames: { dusk: dusk.tif, f: f.tif, g: { file: g.tif, exposure: 1 } }\n"
                        + "steps: [ { lay: f } ]\n"))) {
      gelled = Pictures.planes(named.before());
      assertThat(named.before().dimensionsAsLongArray()).containsExactly(SIDE, SIDE, 3);
    }
    try (Engine engine = Engine.builder().build();
        Composite plain = engine.open(desk.recipe(head + "steps: [ { lay: f } ]\n"))) {
      asBase = Pictures.planes(plain.before());
    }
    assertThat(asBase.plane(0)[0]).isEqualTo((float) light(desk.sample(1, 0, 0, 0)));
    assertThat(gelled.plane(0)[0]).isEqualTo(2 * (float) light(desk.sample(4, 0, 0, 0)));
  }

  @Test
  void beforeIsDeliveredBesideTheFinishedPicture() {
    desk.frame("f.tif", 3);
    Path recipe =
        desk.recipe(
            """
            duskply: 1
            base: dusk
            frames: { dusk: dusk.tif, f: f.tif }
            steps: [ { lay: f } ]
            finish: { crop: { left: 1, top: 2, width: 5, height: 4 } }
            deliverables:
              print: out.dir/<recipe>-<width>.tif
              web: web.tif
            """);
    try (Engine engine = Engine.builder().threads(1).build();
        Composite composite = engine.open(recipe)) {
      composite.deliver(folder, Set.of(), Progress.SILENT);
      List<Delivered.File> before =
          composite.deliverBefore(folder, Set.of(), Progress.SILENT).files();
      assertThat(before.stream().map(f -> folder.relativize(f.path()).toString()))
          .containsExactly("out.dir/recipe-5-before.tif", "web-before.tif");
      // Cropped as the finished picture is, and what the base holds.
      int[] codes = Pictures.samples(folder.resolve("web-before.tif"));
      assertThat(codes).hasSize(5 * 4 * 3);
      assertThat(codes[4]).isEqualTo(desk.sample(1, 2, 2, 1));
      assertThat(Pictures.samples(folder.resolve("web.tif"))[4]).isEqualTo(desk.sample(3, 2, 2, 1));
      assertThat(composite.deliverBefore(folder, Set.of("web"), Progress.SILENT).files())
          .hasSize(1);
    }
  }

  @Test
  void aTransparentBeforeStandsOverTheBase() {
    desk.write(
        "f.tif",
        new TiffFile(SIDE, SIDE, 4, 16, (x, y, c) -> c == 3 ? 65535 * (x / 4) : 30_000)
            .shorts(338, 2)
            .bytes());
    Path recipe =
        desk.recipe("duskply: 1\nbase: dusk\nbefore: f\nframes: { dusk: dusk.tif, f: f.tif }\n");
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(recipe)) {
      Planes before = Pictures.planes(composite.before());
      assertThat(before.plane(1)[0]).isEqualTo((float) light(desk.sample(1, 0, 0, 1)));
      assertThat(before.plane(1)[7]).isEqualTo((float) light(30_000));
    }
  }

  // recipes that a program made

  @Test
  void aProgramsRecipeThatNamesNoFrameIsRefusedInWords() {
    desk.frame("f.tif", 3);
    Recipe read = RecipeReader.read(recipe("  f: f.tif\n"));
    Frame known = read.frames().get("dusk");
    for (Recipe wrong :
        List.of(
            read.withBase("nobody"),
            read.withFrames(Map.of()),
            read.withFrames(Map.of("dusk", known)),
            read.withFrames(Map.of("f", known)))) {
      try (Engine engine = Engine.builder().threads(1).build()) {
        assertThatThrownBy(() -> engine.open(wrong, folder, View.WHOLE, Map.of()))
            .isInstanceOf(RecipeException.class)
            .hasMessageContaining("There is no frame ")
            .hasMessageContaining(" among the recipe's frames.");
      }
    }
    Frame lost =
        new Frame(
            "f.tif", 0, new Match("gone", MatchBy.EXIF), null, null, null, Coverage.USE, Map.of());
    Recipe unmatched = read.withFrames(Map.of("dusk", known, "f", lost));
    try (Engine engine = Engine.builder().threads(1).build()) {
      assertThatThrownBy(() -> engine.open(unmatched, folder, View.WHOLE, Map.of()))
          .isInstanceOf(RecipeException.class)
          .hasMessageContaining("There is no frame gone among the recipe's frames.");
    }
  }

  // frames from memory

  @Test
  void everyKeyWorksOnAFrameInMemory() {
    // Floats: 0.25 everywhere, alpha 1 on the right half alone.
    float[] values = new float[SIDE * SIDE * 4];
    for (int i = 0; i < values.length; i++) {
      values[i] = i < 3 * SIDE * SIDE ? 0.25f : i % SIDE < SIDE / 2 ? 0 : 1;
    }
    MemoryFrame frame = MemoryFrame.of(ArrayImgs.floats(values, SIDE, SIDE, 4));
    shot("a.tif", 10_000, 0.25, 8, 100);
    Map<String, MemoryFrame> memory = Map.of("f", frame.takenWith(1, 8, 100));
    float base = (float) light(desk.sample(1, 0, 0, 0));

    Planes plain = laid("  f: f.tif\n", memory);
    assertThat(plain.plane(0)[0]).isEqualTo(base);
    assertThat(plain.plane(0)[7]).isEqualTo(0.25f);
    assertThat(laid("  f: { file: f.tif, coverage: ignore }\n", memory).plane(0)[0])
        .isEqualTo(0.25f);
    assertThat(
            laid("  a: a.tif\n  f: { file: f.tif, match: { frame: a, by: exif } }\n", memory)
                .plane(0)[7])
        .isEqualTo(0.0625f);
    assertThat(laid("  f: { file: f.tif, exposure: 1, gel: 0 }\n", memory).plane(2)[7])
        .isEqualTo(0.5f);
    double[] m = GelMatrix.of(new Gel(100.0, null, null, 0), SRGB);
    Close.check(
        "gel",
        laid("  f: { file: f.tif, gel: 100 }\n", memory).plane(0)[7],
        0.25 * (m[0] + m[1] + m[2]),
        6 * 0x1p-24);
    assertThat(laid("  f: { file: f.tif, reads-as: encoded }\n", memory).plane(0)[7])
        .isEqualTo((float) SRGB.curve(0).toLinear(0.25));
    // Primaries by name, and linear light all the same.
    double[] wide = ColourSpace.matrix(ColourSpace.of(NamedSpace.REC2020), SRGB);
    Close.check(
        "profile",
        laid("  f: { file: f.tif, profile: rec2020 }\n", memory).plane(0)[7],
        0.25 * (wide[0] + wide[1] + wide[2]),
        4 * 0x1p-24);
  }

  @Test
  void aFrameInMemoryWithoutSettingsCannotBeMatched() {
    MemoryFrame frame = MemoryFrame.of(ArrayImgs.unsignedBytes(SIDE, SIDE));
    shot("a.tif", 10_000, 0.25, 8, 100);
    RecipeException told =
        catchThrowableOfType(
            RecipeException.class,
            () ->
                laid(
                    "  a: a.tif\n  f: { file: f.tif, match: { frame: a, by: exif } }\n",
                    Map.of("f", frame)));
    assertThat(told).hasMessageContaining("shutter time, f-number and ISO");
  }
}
