package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.iptc.IptcDirectory;
import com.drew.metadata.xmp.XmpDirectory;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.imageio.ImageIO;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.render.Job;
import org.duskply.engine.render.Output;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.Pictures;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a recipe's deliverables make of its picture. */
class DeliveryTest {
  private static final String FRAMES =
      """
      duskply: 1
      base: dusk
      frames: { dusk: 0.tif, a: 1.tif }
      """;

  @TempDir Path folder;

  private Desk desk(int width, int height) {
    Desk desk = new Desk(folder, width, height);
    desk.frame("0.tif", 0);
    desk.frame("1.tif", 1);
    return desk;
  }

  private List<Path> deliver(Path recipe, View view) {
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(recipe, view)) {
      return composite.deliver(folder.resolve("out"), Set.of(), Progress.SILENT).files().stream()
          .map(Delivered.File::path)
          .toList();
    }
  }

  /** Counters, not time: three files of three sizes decode each strip of each frame once. */
  @Test
  void severalFilesTakeOnePassOverTheFrames() {
    Path recipe =
        desk(60, 300)
            .recipe(
                FRAMES
                    + """
                    steps: [ { pop: a } ]
                    deliverables:
                      print: { file: print.tif, compress: lzw }
                      web: { file: web.jpg, long-edge: 50 }
                      card: { file: card.png, size: [40, 40] }
                    """);
    try (Engine engine = Engine.builder().threads(2).build();
        PlannedComposite composite = (PlannedComposite) engine.open(recipe)) {
      List<Delivery> files = new ArrayList<>();
      composite
          .recipe()
          .deliverables()
          .forEach(
              (name, d) ->
                  files.add(Delivery.prepare(composite, composite.version(), name, d, folder)));
      List<Output> outputs = files.stream().map(Delivery::output).toList();
      Plan plan = Plan.of(outputs.stream().map(Output::root).toList(), engine.settings());
      try (Job job = new Job(plan, outputs, engine.settings().bandRows(), engine.store())) {
        files.forEach(Delivery::open);
        job.run(engine.pool(), engine.threads(), engine.memory(), share -> {}, Stop.NEVER);
        assertThat(plan.frames()).hasSize(2);
        for (int f = 0; f < 2; f++) {
          int units = plan.frames().get(f).source().units();
          assertThat(units).isGreaterThan(10);
          assertThat(job.counters().unitsDecoded(f)).isEqualTo(units);
        }
      } finally {
        files.forEach(Delivery::close);
      }
    }
  }

  @Test
  void aSizeOfAnotherShapeCropsAboutTheMiddle() {
    Desk desk = desk(40, 30);
    Path recipe =
        desk.recipe(FRAMES + "deliverables: { card: { file: card.tif, size: [20, 30] } }\n");
    short[] codes = Pictures.codes(deliver(recipe, View.WHOLE).get(0));
    for (int i = 0; i < codes.length; i++) {
      int x = i / 3 % 20 + 10;
      int y = i / 60;
      assertThat(codes[i] & 0xFFFF).isEqualTo(desk.sample(0, x, y, i % 3));
    }
  }

  @Test
  void sizesDownToOnePixelAndBeyondThePictures() throws IOException {
    Path recipe =
        desk(40, 30)
            .recipe(
                FRAMES
                    + """
                    deliverables:
                      dot: { file: dot.png, size: [1, 1] }
                      line: { file: line.png, size: [80, 1] }
                      edge: { file: edge.jpg, long-edge: 1 }
                      poster: { file: poster.tif, long-edge: 100, depth: 8 }
                    """);
    List<String> sizes = new ArrayList<>();
    for (Path file : deliver(recipe, View.WHOLE)) {
      BufferedImage image = ImageIO.read(file.toFile());
      sizes.add(image.getWidth() + " × " + image.getHeight());
    }
    assertThat(sizes).containsExactly("1 × 1", "80 × 1", "1 × 1", "100 × 75");
  }

  @Test
  void anEnlargementIsToldAndMade() throws IOException {
    Path recipe =
        desk(40, 30)
            .recipe(
                FRAMES
                    + """
                    deliverables:
                      web: { file: web.png, long-edge: 40 }
                      poster: { file: poster.png, long-edge: 100 }
                      card: { file: card.png, size: [31, 31] }
                    """);
    try (Engine engine = Engine.builder().build();
        Composite composite = engine.open(recipe)) {
      assertThat(composite.notices())
          .extracting(Problem::path, Problem::sentence)
          .contains(
              tuple(
                  "deliverables/poster/long-edge",
                  "This file is larger than what it shows: 40 × 30 pixels become 100 × 75, which"
                      + " adds no detail."),
              tuple(
                  "deliverables/card/size",
                  "This file is larger than what it shows: 30 × 30 pixels become 31 × 31, which"
                      + " adds no detail."))
          .noneMatch(notice -> notice.toList().get(0).toString().contains("web"));
    }
    assertThat(ImageIO.read(deliver(recipe, View.WHOLE).get(1).toFile()).getWidth()).isEqualTo(100);
  }

  @Test
  void aReducedViewReducesSizes() throws IOException {
    Path recipe =
        desk(40, 30)
            .recipe(
                FRAMES
                    + """
                    deliverables:
                      card: { file: card.png, size: [21, 10] }
                      web: { file: web.png, long-edge: 16 }
                    """);
    List<String> sizes = new ArrayList<>();
    for (Path file : deliver(recipe, View.WHOLE.reducedBy(4))) {
      BufferedImage image = ImageIO.read(file.toFile());
      sizes.add(image.getWidth() + " × " + image.getHeight());
    }
    assertThat(sizes).containsExactly("5 × 3", "4 × 3");
  }

  @Test
  void metadataAndDensityReachTheFile() throws Exception {
    Path recipe =
        desk(40, 30)
            .recipe(
                FRAMES
                    + """
                    title: "Café: working title"
                    deliverables: { web: { file: web.jpg, density: 240 } }
                    metadata:
                      creator: "A. Keeper"
                      caption: "Twenty minutes after sunset"
                      keywords: [boathouse, tarn]
                      alt-text: "A lit café"
                    """);
    var metadata = ImageMetadataReader.readMetadata(deliver(recipe, View.WHOLE).get(0).toFile());
    ExifIFD0Directory exif = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
    assertThat(exif.getString(ExifIFD0Directory.TAG_ARTIST)).isEqualTo("A. Keeper");
    assertThat(exif.getInt(ExifIFD0Directory.TAG_X_RESOLUTION)).isEqualTo(240);
    IptcDirectory iptc = metadata.getFirstDirectoryOfType(IptcDirectory.class);
    assertThat(iptc.getKeywords()).containsExactly("boathouse", "tarn");
    assertThat(iptc.getString(IptcDirectory.TAG_OBJECT_NAME)).isEqualTo("Café: working title");
    assertThat(
            metadata
                .getFirstDirectoryOfType(XmpDirectory.class)
                .getXmpProperties()
                .get("Iptc4xmpCore:AltTextAccessibility[1]"))
        .isEqualTo("A lit café");
  }

  /** Reported of other writers: the time of capture is lost, and the frame's orientation kept. */
  @Test
  void theTimeOfCaptureIsTheBasesAndTheOrientationUpright() throws Exception {
    Desk desk = desk(40, 30);
    desk.write(
        "0.tif",
        desk.file(0)
            .shorts(274, 8)
            .camera(
                36867,
                2,
                20,
                "2026:03:09 18:05:07\0".getBytes(java.nio.charset.StandardCharsets.US_ASCII))
            .bytes());
    desk.write("1.tif", desk.file(1).shorts(274, 8).bytes());
    Path recipe = desk.recipe(FRAMES + "deliverables: { print: print.tif, web: web.jpg }\n");
    for (Path file : deliver(recipe, View.WHOLE)) {
      var metadata = ImageMetadataReader.readMetadata(file.toFile());
      assertThat(
              metadata
                  .getFirstDirectoryOfType(ExifSubIFDDirectory.class)
                  .getString(ExifSubIFDDirectory.TAG_DATETIME_ORIGINAL))
          .isEqualTo("2026:03:09 18:05:07");
      ExifIFD0Directory first = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
      assertThat(first.getInt(ExifIFD0Directory.TAG_ORIENTATION)).isEqualTo(1);
      assertThat(ImageIO.read(file.toFile()).getWidth()).isEqualTo(30);
    }
  }

  /**
   * Reported of other engines: bands where an intermediate picture is narrow. A smooth sky goes
   * down six stops and up again, and through twenty steps that change nothing: in 16 bits every
   * level is there, and in 8 the means of its columns rise evenly.
   */
  @Test
  void aSmoothSkyHasNoBands() throws IOException {
    Desk desk = desk(40, 30);
    int width = 512;
    TiffFile sky =
        new TiffFile(width, 64, 3, 16, (x, y, c) -> 12_000 + x).compression(8).strips(16);
    desk.write("0.tif", sky.bytes());
    StringBuilder text = new StringBuilder("duskply: 1\nbase: dusk\nframes: { dusk: 0.tif }\n");
    text.append("steps:\n  - { adjust: [ { exposure: -6 }, { exposure: 6 } ] }\n");
    for (int i = 0; i < 20; i++) {
      text.append("  - { adjust: [ { saturation: 1 }, { exposure: 0 } ] }\n");
    }
    Path recipe =
        desk.recipe(
            text
                + "deliverables: { deep: deep.tif, shallow: shallow.png, bands: { file: bands.png, dither: false } }\n");
    List<Path> files = deliver(recipe, View.WHOLE);
    short[] deep = Pictures.codes(files.get(0));
    Set<Short> levels = new HashSet<>();
    for (int i = 0; i < deep.length; i++) {
      assertThat(deep[i] & 0xFFFF).isEqualTo(12_000 + i / 3 % width);
      levels.add(deep[i]);
    }
    assertThat(levels).hasSize(width);
    BufferedImage bands = ImageIO.read(files.get(2).toFile());
    assertThat(bands.getRaster().getSamples(0, 0, width, 1, 1, (int[]) null))
        .as("without dither")
        .isEqualTo(bands.getRaster().getSamples(0, 63, width, 1, 1, (int[]) null));
    BufferedImage shallow = ImageIO.read(files.get(1).toFile());
    double before = 0;
    for (int from = 0; from < width; from += 64) { // a quarter of a code a block
      double sum = 0;
      for (int i = 0; i < 64 * 64; i++) {
        sum += shallow.getRaster().getSample(from + i % 64, i / 64, 1);
      }
      double mean = sum / (64 * 64);
      double exact = (12_000 + from + 31.5) / 257;
      assertThat(mean).isBetween(exact - 0.01, exact + 0.01).isGreaterThan(before);
      before = mean;
    }
  }
}
