package org.duskply.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.LongAdder;
import java.util.stream.IntStream;
import net.imglib2.RandomAccessibleInterval;
import net.imglib2.converter.Converters;
import net.imglib2.img.array.ArrayImgs;
import net.imglib2.type.numeric.integer.UnsignedShortType;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.render.Counters;
import org.duskply.engine.render.Job;
import org.duskply.engine.render.Output;
import org.duskply.engine.testing.Desk;
import org.duskply.engine.testing.Pictures;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.RecipeReader;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an engine that keeps its work does of an edited recipe: what changed, and nothing else. */
class EditsTest {
  private static final int WIDTH = 96;
  private static final int HEIGHT = 640; // ten bands of 64 rows, 40 units of 16
  private static final int BANDS = 10;

  private static final String HEAD =
      """
      duskply: 1
      base: f0
      working: srgb
      frames: { f0: 0.tif, f1: 1.tif, f2: 2.tif, f3: 3.tif, f4: 4.tif, f5: 5.tif }
      """;

  /** Two pops, a third in rows 210 to 330, a sky, a frame laid thinly, and a curve everywhere. */
  private static final String STEPS =
      """
      steps:
        - { pop: f1, mask: { polygon: "5,30 90,60 50,140", feather: 6 } }
        - { pop: f2, mask: { polygon: "10,300 80,340 40,500", feather: 6 } }
        - { pop: f3, mask: { polygon: "20,210 70,240 60,330", feather: 4 } }
        - { lay: f4, mask: { polygon: "0,0 96,0 96,250 0,220", feather: 3 } }
        - { lay: f5, opacity: 0.6, mask: { polygon: "30,150 90,200 60,400", feather: 6 } }
        - { adjust: [ { power: 0.95 } ] }
      """;

  private static final String OUT = "deliverables: { out: out.tif }\n";

  @TempDir Path folder;
  private Desk desk;
  private int outs;

  @BeforeEach
  void frames() {
    desk = new Desk(folder, WIDTH, HEIGHT);
    for (int i = 0; i < 6; i++) {
      desk.frame(i + ".tif", i);
    }
  }

  private static Engine keeping() {
    return Engine.builder().threads(2).keep(64 << 20).build();
  }

  /** What one rendering did, and what it wrote. */
  private record Work(Plan plan, Counters counters, List<Integer> encoded, byte[] file) {
    int units() {
      return IntStream.range(0, plan.frames().size()).map(counters::unitsDecoded).sum();
    }

    int units(String frame) {
      return IntStream.range(0, plan.frames().size())
          .filter(f -> plan.frames().get(f).name().equals(frame))
          .map(counters::unitsDecoded)
          .sum();
    }

    int bands() {
      return IntStream.range(0, plan.stages().size()).map(counters::bandsRun).sum();
    }

    int masks() {
      return IntStream.range(0, plan.stages().size())
          .filter(s -> plan.stages().get(s).mask())
          .map(counters::bandsRun)
          .sum();
    }
  }

  private Work render(Engine engine, String text, int reduction) {
    Path recipe = desk.recipe(text);
    Path out = folder.resolve("out-" + outs++);
    try (PlannedComposite composite =
        (PlannedComposite) engine.open(recipe, View.WHOLE.reducedBy(reduction))) {
      List<Delivery> files = composite.deliveries(Set.of(), out);
      List<Output> outputs = files.stream().map(Delivery::output).toList();
      Plan plan = composite.plan(outputs);
      try (Job job = new Job(plan, outputs, engine.settings().bandRows(), engine.store())) {
        files.forEach(Delivery::open);
        job.run(engine.pool(), engine.threads(), engine.memory(), share -> {}, Stop.NEVER);
        List<Integer> encoded = new ArrayList<>();
        List<byte[]> bytes = new ArrayList<>();
        for (int f = 0; f < files.size(); f++) {
          files.get(f).finish(() -> false);
          bytes.add(Pictures.bytes(files.get(f).commit().path()));
          encoded.add(job.counters().bandsEncoded(f));
        }
        return new Work(plan, job.counters(), encoded, bytes.get(0));
      } finally {
        files.forEach(Delivery::close);
      }
    }
  }

  private byte[] fresh(String text, int reduction) {
    try (Engine engine = Engine.builder().threads(1).build()) {
      return render(engine, text, reduction).file();
    }
  }

  private void isAsIfMadeAnew(Work work, String text, int reduction) {
    assertThat(work.file()).isEqualTo(fresh(text, reduction));
  }

  @Test
  void theSameAgainIsNeitherDecodedNorRunNorEncoded() {
    String text = HEAD + STEPS + OUT;
    try (Engine engine = keeping()) {
      Work first = render(engine, text, 1);
      assertThat(first.units("f0")).isEqualTo(40);
      assertThat(first.encoded()).containsExactly(BANDS);
      Work again = render(engine, text, 1);
      assertThat(again.units() + again.bands()).isZero();
      assertThat(again.encoded()).containsExactly(0);
      assertThat(again.file()).isEqualTo(first.file());
    }
  }

  @Test
  void ofAPreviewWhoseLastStepIsEditedNoFrameIsDecodedAgain() {
    // 640 rows by 4: three bands of 64 rows in two legs. Nothing of the first leg shows in the
    // last band: there it is the base frame, which is kept.
    String edited = HEAD + STEPS.replace("0.95 } ]", "0.95 } ], opacity: 0.5") + OUT;
    try (Engine engine = keeping()) {
      Work first = render(engine, HEAD + STEPS + OUT, 4);
      assertThat(first.units("f0")).isEqualTo(40);
      Work work = render(engine, edited, 4);
      assertThat(work.units()).isZero();
      assertThat(work.bands()).as("but for the picture's").isEqualTo(2 + 3);
      assertThat(work.encoded()).containsExactly(3);
      isAsIfMadeAnew(work, edited, 4);
    }
  }

  @Test
  void ofAStepInTheMiddleTheBandsItShowsInAreMadeAlone() {
    // Rows 210 to 330 with their feather lie in the bands from 192 to 384, three in two legs.
    String edited = HEAD + STEPS.replace("pop: f3,", "pop: f3, opacity: 0.7,") + OUT;
    try (Engine engine = keeping()) {
      render(engine, HEAD + STEPS + OUT, 1);
      Work work = render(engine, edited, 1);
      assertThat(work.units()).isZero();
      assertThat(work.bands()).isEqualTo(2 * 3);
      assertThat(work.encoded()).containsExactly(3);
      isAsIfMadeAnew(work, edited, 1);
    }
  }

  @Test
  void withoutRoomForSamplesTheUnitsOfTheseBandsAreDecodedAlone() {
    String edited = HEAD + STEPS.replace("pop: f3,", "pop: f3, opacity: 0.7,") + OUT;
    long files = fresh(edited, 1).length;
    try (Engine engine = Engine.builder().threads(2).keep(files + 10_000).build()) {
      render(engine, HEAD + STEPS + OUT, 1);
      Work work = render(engine, edited, 1);
      assertThat(work.encoded()).containsExactly(3);
      assertThat(work.units("f0")).isEqualTo(3 * 64 / 16);
      isAsIfMadeAnew(work, edited, 1);
    }
  }

  @Test
  void anotherExposureOfAFrameDecodesNothing() {
    String edited =
        HEAD.replace("f3: 3.tif", "f3: { file: 3.tif, exposure: -1, gel: 40 }") + STEPS + OUT;
    try (Engine engine = keeping()) {
      render(engine, HEAD + STEPS + OUT, 1);
      Work work = render(engine, edited, 1);
      assertThat(work.units()).isZero();
      assertThat(work.encoded()).containsExactly(3);
      isAsIfMadeAnew(work, edited, 1);
    }
  }

  @Test
  void aMovedMaskDecodesWhatItNewlyShowsOfItsFrameAlone() {
    String edited = HEAD + STEPS.replace("20,210 70,240", "20,200 70,240") + OUT;
    for (int reduction : new int[] {1, 4}) {
      try (Engine engine = keeping()) {
        Work first = render(engine, HEAD + STEPS + OUT, reduction);
        Work work = render(engine, edited, reduction);
        assertThat(work.units()).isEqualTo(work.units("f3")).isBetween(1, first.units("f3"));
        isAsIfMadeAnew(work, edited, reduction);
      }
    }
  }

  @Test
  void whatIsSaidInWordsChangesNoBand() {
    String edited = "title: Boathouse\nmetadata: { creator: Someone }\n";
    try (Engine engine = keeping()) {
      Work first = render(engine, HEAD + STEPS + OUT, 1);
      Work work = render(engine, HEAD + edited + STEPS + OUT, 1);
      assertThat(work.bands() + work.encoded().get(0)).isZero();
      assertThat(work.file()).isNotEqualTo(first.file());
      isAsIfMadeAnew(work, HEAD + edited + STEPS + OUT, 1);
    }
  }

  @Test
  void anotherFileOfTheSamePictureDecodesNothing() {
    String edited =
        "deliverables: { out: { file: out.png, depth: 8 }, small: { file: s.jpg, long-edge: 300 } }";
    try (Engine engine = keeping()) {
      render(engine, HEAD + STEPS + OUT, 1);
      Work work = render(engine, HEAD + STEPS + edited, 1);
      assertThat(work.units() + work.masks()).isZero();
      assertThat(work.encoded()).containsExactly(BANDS, 5);
      isAsIfMadeAnew(work, HEAD + STEPS + edited, 1);
    }
  }

  /** The picture below a mask that reads it is a stage: an edit above it starts from there. */
  @Test
  void anEditStartsFromThePictureThatAMaskHasReadBelowIt() {
    String above =
        "  - { adjust: [ { exposure: 0.3 } ], mask: { luminance: { from: 0.2, soft: 0.1 } } }\n";
    String edited = HEAD + STEPS + above.replace("0.3", "0.4") + OUT;
    try (Engine engine = keeping()) {
      render(engine, HEAD + STEPS + above + OUT, 1);
      Work work = render(engine, edited, 1);
      assertThat(work.units() + work.masks()).isZero();
      assertThat(work.bands()).isEqualTo(BANDS);
      isAsIfMadeAnew(work, edited, 1);
    }
  }

  /** What is delivered beside a picture does not change what it is known by. */
  @Test
  void aPictureIsFoundWhateverItWasMadeTogetherWith() {
    String all =
        HEAD
            + STEPS.replace("{ adjust", "{ id: curve, adjust")
            + "alternates: { less: { skip: [curve] } }\n"
            + "deliverables: { out: { file: <alternate>.tif, alternates: [%s] } }\n";
    try (Engine engine = keeping()) {
      assertThat(render(engine, all.formatted("main, less"), 1).encoded()).hasSize(2);
      for (String one : List.of("main", "less")) {
        Work work = render(engine, all.formatted(one), 1);
        assertThat(work.units() + work.bands() + work.encoded().get(0)).as(one).isZero();
        isAsIfMadeAnew(work, all.formatted(one), 1);
      }
    }
  }

  @Test
  void aFrameThatIsExportedAnewIsReadAnew() throws IOException {
    String text = HEAD + STEPS + OUT;
    try (Engine engine = keeping()) {
      Work first = render(engine, text, 1);
      // As like the old as a file can be: same name, bytes and time; only the file is another.
      Path frame = desk.write("3.tif", plain(40_000));
      FileTime then = Files.getLastModifiedTime(frame);
      Work brighter = render(engine, text, 1);
      assertThat(brighter.file()).isNotEqualTo(first.file());
      Path anew = desk.write("anew.tif", plain(0));
      assertThat(Files.size(anew)).isEqualTo(Files.size(frame));
      Files.move(anew, frame, StandardCopyOption.REPLACE_EXISTING);
      Files.setLastModifiedTime(frame, then);
      Work darker = render(engine, text, 1);
      assertThat(darker.file()).isNotEqualTo(brighter.file());
      assertThat(darker.units()).isEqualTo(darker.units("f3")).isPositive();
      isAsIfMadeAnew(darker, text, 1);
    }
  }

  private static byte[] plain(int darkest) {
    return new TiffFile(WIDTH, HEIGHT, 3, 16, (x, y, c) -> darkest + 10 * x + y + c).bytes();
  }

  @Test
  void aFrameThatChangesBetweenOpeningAndReadingIsRefused() {
    String text = HEAD + STEPS + OUT;
    Path recipe = desk.recipe(text);
    try (Engine engine = keeping()) {
      try (Composite composite = engine.open(recipe)) {
        desk.write("moved.tif", Pictures.bytes(folder.resolve("3.tif")));
        assertThat(folder.resolve("moved.tif").toFile().renameTo(folder.resolve("3.tif").toFile()))
            .isTrue();
        assertThatThrownBy(() -> composite.deliver(folder.resolve("o"), Set.of(), Progress.SILENT))
            .isInstanceOf(DuskplyException.class)
            .hasMessage("3.tif has changed since it was opened.");
      }
      isAsIfMadeAnew(render(engine, text, 1), text, 1);
    }
  }

  /** A painted mask is read off one sample of each pixel of a file that may be a frame as well. */
  @Test
  void aFileThatIsFrameAndMaskIsKeptAsBoth() {
    String steps =
        "steps: [ { lay: f2, mask: { image: 1.tif } }, { pop: f1, opacity: %s } ]\n" + OUT;
    try (Engine engine = keeping()) {
      render(engine, HEAD + steps.formatted("1.0"), 1);
      String edited = HEAD + steps.formatted("0.5");
      Work work = render(engine, edited, 1);
      assertThat(work.units()).isZero();
      isAsIfMadeAnew(work, edited, 1);
    }
  }

  @Test
  void whatWasOddInAFrameIsSaidOfEachPictureMadeOfIt() {
    int[] block = {0};
    desk.write(
        "3.tif", desk.file(3).damage(b -> block[0]++ == 30 ? new byte[b.length] : b).bytes());
    Path recipe = desk.recipe(HEAD + STEPS + OUT);
    try (Engine engine = Engine.builder().threads(1).tolerant(true).keep(64 << 20).build()) {
      List<String> first = notices(engine, recipe);
      assertThat(first).singleElement().asString().contains("rows 240 and");
      assertThat(notices(engine, recipe)).isEqualTo(first);
      desk.recipe(HEAD + STEPS.replace("0.95", "0.9") + OUT);
      assertThat(notices(engine, recipe)).isEqualTo(first);
    }
  }

  private List<String> notices(Engine engine, Path recipe) {
    try (Composite composite = engine.open(recipe)) {
      return composite.deliver(folder.resolve("o"), Set.of(), Progress.SILENT).notices();
    }
  }

  /** A job is not refused for what is kept, and does not pass its memory by it. */
  @Test
  void theFewestBytesOfAFirstRenderingAreEnoughForAllThatFollow() {
    long floor;
    Path recipe = desk.recipe(HEAD + STEPS + OUT);
    try (Engine engine = Engine.builder().memory(1).build();
        Composite composite = engine.open(recipe)) {
      floor = composite.explain().floorBytes();
    }
    for (long keep : new long[] {1, 50_000, 1 << 20, 64 << 20}) {
      try (Engine engine = Engine.builder().threads(2).memory(floor).keep(keep).build()) {
        for (String opacity : List.of("1.0", "0.9", "0.8")) {
          desk.recipe(HEAD + STEPS.replace("pop: f3,", "pop: f3, opacity: " + opacity + ",") + OUT);
          try (Composite composite = engine.open(recipe)) {
            Delivered made = composite.deliver(folder.resolve("o"), Set.of(), Progress.SILENT);
            assertThat(made.peakBytes()).isLessThanOrEqualTo(floor);
          }
        }
      }
    }
  }

  @Test
  void whoLooksAtAnEditedPreviewReadsNoFrameAgain() {
    LongAdder reads = new LongAdder();
    Map<String, MemoryFrame> frames =
        Map.of("f0", counted(0, reads), "f1", counted(1, reads), "f2", counted(2, reads));
    String text =
        "duskply: 1\nbase: f0\nworking: srgb\nframes: { f0: a.tif, f1: b.tif, f2: c.tif }\nsteps:\n"
            + "  - { pop: f1, mask: { polygon: '5,30 90,60 50,300', feather: 6 } }\n"
            + "  - { pop: f2, opacity: 0.8, mask: { polygon: '5,130 90,60 50,600', feather: 6 } }\n"
            + "  - { adjust: [ { power: %s } ] }\n";
    try (Engine engine = keeping();
        Engine fresh = Engine.builder().threads(1).build()) {
      looked(engine, text.formatted("0.95"), frames);
      assertThat(reads.sum()).isPositive();
      reads.reset();
      float[] edited = looked(engine, text.formatted("0.8"), frames);
      assertThat(reads.sum()).isZero();
      assertThat(edited).isEqualTo(looked(fresh, text.formatted("0.8"), frames));
    }
  }

  private float[] looked(Engine engine, String text, Map<String, MemoryFrame> frames) {
    Path recipe = desk.recipe(text);
    try (Composite composite =
        engine.open(RecipeReader.read(recipe), folder, View.WHOLE.reducedBy(2), frames)) {
      return Pictures.planes(composite.image()).plane(1);
    }
  }

  /** A frame in memory that counts how often a sample of it is read. */
  private MemoryFrame counted(int seed, LongAdder reads) {
    RandomAccessibleInterval<UnsignedShortType> image =
        Converters.convert(
            (RandomAccessibleInterval<UnsignedShortType>)
                ArrayImgs.unsignedShorts(samples(seed), WIDTH, HEIGHT, 3),
            (in, out) -> {
              reads.increment();
              out.set(in);
            },
            new UnsignedShortType());
    return MemoryFrame.of(image);
  }

  private short[] samples(int seed) {
    short[] samples = new short[WIDTH * HEIGHT * 3];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (short) desk.sample(seed, i % WIDTH, i / WIDTH % HEIGHT, i / (WIDTH * HEIGHT));
    }
    return samples;
  }
}
