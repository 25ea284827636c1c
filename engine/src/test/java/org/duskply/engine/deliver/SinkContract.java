package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.IccWriter;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What every {@link Sink} must do; a format's own test extends it. */
abstract class SinkContract {
  @TempDir protected Path folder;

  /** The format under test, in each way it can be written. */
  abstract List<Way> ways();

  /** Checks what readers of other makers say of a file. */
  abstract void readBack(Path file, TestPicture picture, Way way) throws IOException;

  /** The profile in a file, by a reader of another maker. */
  abstract byte[] profileIn(Path file) throws Exception;

  record Way(Format format, int depth, Compress compress) {}

  final SinkSpec spec(Way way, NamedSpace space, int width, int height, int bandRows) {
    return new SinkSpec(
        folder.resolve("print.bin"),
        way.format(),
        way.depth(),
        space,
        way.compress(),
        0.95,
        false,
        width,
        height,
        bandRows,
        ColourSpace.of(space),
        SinkSpec.DOTS_PER_INCH,
        Captions.NONE,
        0);
  }

  final SinkSpec spec(Way way, TestPicture picture, int bandRows) {
    return spec(way, NamedSpace.SRGB, picture.width, picture.height, bandRows);
  }

  private List<String> files() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(f -> String.valueOf(f.getFileName())).sorted().toList();
    }
  }

  private static TestPicture picture(Way way, int width, int height) {
    return TestPicture.noisy(width, height, way.depth(), NamedSpace.SRGB, 11);
  }

  private static List<Encoded> encodeAll(Sink sink, SinkSpec spec, TestPicture picture) {
    List<Encoded> all = new ArrayList<>();
    for (int k = 0; k < sink.bands(); k++) {
      all.add(sink.encode(k, picture.rows(spec.layout().area(k))));
    }
    return all;
  }

  @ParameterizedTest
  @CsvSource({
    "1, 1, 64",
    "1, 37, 16",
    "37, 1, 16",
    "33, 29, 8",
    "64, 64, 64",
    "65, 64, 1",
    "31, 50, 7",
    "20, 30, 100",
    "129, 65, 64",
    "1500, 40, 32"
  })
  void anySizeReadsBack(int width, int height, int bandRows) throws IOException {
    for (Way way : ways()) {
      TestPicture picture = picture(way, width, height);
      SinkSpec spec = spec(way, picture, bandRows);
      picture.deliver(spec);
      readBack(spec.target(), picture, way);
    }
  }

  @Test
  void bandsMayBeEncodedInAnyOrderByAnyThread() throws Exception {
    ExecutorService pool = Executors.newFixedThreadPool(4);
    try {
      for (Way way : ways()) {
        TestPicture picture = picture(way, 121, 200);
        SinkSpec spec = spec(way, picture, 16);
        picture.deliver(spec);
        byte[] plain = Files.readAllBytes(spec.target());
        List<Integer> order = new ArrayList<>();
        for (int k = 0; k < spec.layout().bands(); k++) {
          order.add(k);
        }
        Collections.shuffle(order, new Random(3));
        try (Sink sink = Sinks.open(spec)) {
          List<Future<Encoded>> encoded = new ArrayList<>(Collections.nCopies(order.size(), null));
          for (int k : order) {
            Planes rows = picture.rows(spec.layout().area(k));
            sink.encode(k, rows); // once more than is needed
            encoded.set(k, pool.submit(() -> sink.encode(k, rows)));
          }
          for (int k = 0; k < order.size(); k++) {
            sink.append(k, encoded.get(k).get());
          }
          sink.commit();
        }
        assertThat(Files.readAllBytes(spec.target())).as("%s", way).isEqualTo(plain);
      }
    } finally {
      pool.shutdownNow();
    }
  }

  @ParameterizedTest
  @EnumSource(NamedSpace.class)
  void holdsTheProfile(NamedSpace space) throws Exception {
    for (Way way : ways()) {
      TestPicture picture = TestPicture.noisy(9, 9, way.depth(), space, 5);
      SinkSpec spec = spec(way, space, 9, 9, 4);
      picture.deliver(spec);
      assertThat(profileIn(spec.target())).as("%s", way).isEqualTo(IccWriter.profile(space));
    }
  }

  @Test
  void encodeLeavesTheRowsAlone() {
    for (Way way : ways()) {
      TestPicture picture = picture(way, 13, 7);
      SinkSpec spec = spec(way, picture, 7);
      Planes rows = picture.rows(Region.ofSize(13, 7));
      try (Sink sink = Sinks.open(spec)) {
        sink.encode(0, rows);
      }
      Planes fresh = picture.rows(Region.ofSize(13, 7));
      for (int p = 0; p < 3; p++) {
        assertThat(rows.plane(p)).isEqualTo(fresh.plane(p));
      }
    }
  }

  @Test
  void countsClippedPixelsAndSurvivesWhatCannotBe() {
    for (Way way : ways()) {
      SinkSpec spec = spec(way, NamedSpace.SRGB, 5, 1, 1);
      Planes rows = new Planes(Region.ofSize(5, 1), 3);
      rows.plane(0)[1] = 2;
      rows.plane(1)[2] = -1;
      rows.plane(2)[3] = Float.NaN;
      rows.plane(0)[4] = Float.POSITIVE_INFINITY;
      try (Sink sink = Sinks.open(spec)) {
        Encoded encoded = sink.encode(0, rows);
        assertThat(encoded.clipped()).isEqualTo(3);
        sink.append(0, encoded);
        sink.commit();
      }
      assertThat(spec.target()).isRegularFile();
    }
  }

  @Test
  void withoutACommitNothingIsLeft() throws IOException {
    for (Way way : ways()) {
      TestPicture picture = picture(way, 40, 40);
      SinkSpec spec = spec(way, picture, 16);
      Files.writeString(spec.target(), "old");
      try (Sink sink = Sinks.open(spec)) {
        Encoded first = sink.encode(0, picture.rows(spec.layout().area(0)));
        sink.append(0, first);
        assertThat(files()).hasSize(2);
      }
      assertThat(spec.target()).hasContent("old");
      assertThat(files()).containsExactly("print.bin");
    }
  }

  @Test
  void commitReplacesTheOldFile() throws IOException {
    for (Way way : ways()) {
      TestPicture picture = picture(way, 40, 40);
      SinkSpec spec = spec(way, picture, 16);
      Files.write(spec.target(), new byte[100_000]);
      picture.deliver(spec);
      readBack(spec.target(), picture, way);
      assertThat(files()).containsExactly("print.bin");
    }
  }

  @Test
  void finishingWritesAllButTheName() throws IOException {
    for (Way way : ways()) {
      TestPicture picture = picture(way, 40, 40);
      SinkSpec spec = spec(way, picture, 40);
      Files.writeString(spec.target(), "old");
      try (Sink sink = Sinks.open(spec)) {
        assertThatThrownBy(() -> sink.finish(() -> false))
            .isInstanceOf(IllegalStateException.class);
        sink.append(0, encodeAll(sink, spec, picture).get(0));
        sink.finish(() -> false);
        assertThat(spec.target()).hasContent("old");
        assertThatThrownBy(() -> sink.finish(() -> false))
            .isInstanceOf(IllegalStateException.class);
        sink.commit();
      }
      readBack(spec.target(), picture, way);
      assertThat(files()).containsExactly("print.bin");
    }
  }

  @Test
  void finishedButNotCommittedNothingIsLeft() throws IOException {
    for (Way way : ways()) {
      TestPicture picture = picture(way, 40, 40);
      SinkSpec spec = spec(way, picture, 40);
      Files.writeString(spec.target(), "old");
      try (Sink sink = Sinks.open(spec)) {
        sink.append(0, encodeAll(sink, spec, picture).get(0));
        sink.finish(() -> false);
      }
      assertThat(spec.target()).hasContent("old");
      assertThat(files()).containsExactly("print.bin");
    }
  }

  @Test
  void aStopGivesUp() throws IOException {
    for (Way way : ways()) {
      TestPicture picture = picture(way, 40, 40);
      SinkSpec spec = spec(way, picture, 40);
      Files.writeString(spec.target(), "old");
      try (Sink sink = Sinks.open(spec)) {
        sink.append(0, encodeAll(sink, spec, picture).get(0));
        BooleanSupplier stop = () -> true;
        assertThatThrownBy(() -> sink.commit(stop)).isInstanceOf(CancellationException.class);
      }
      assertThat(spec.target()).hasContent("old");
      assertThat(files()).containsExactly("print.bin");
    }
  }

  /** The disk fails at every byte of the file in turn, or at 300 of them and the last. */
  @Test
  void aFaultOfTheDiskAnywhereLeavesTheOldFile() throws IOException {
    for (Way way : ways()) {
      TestPicture picture = picture(way, 21, 20);
      SinkSpec spec = spec(way, picture, 8);
      picture.deliver(spec);
      long size = Files.size(spec.target());
      Files.writeString(spec.target(), "old");
      List<Encoded> bands;
      try (Sink sink = Sinks.open(spec)) {
        bands = encodeAll(sink, spec, picture);
      }
      for (long at = 0; at < size; at += 1 + size / 300) {
        assertFails(spec, bands, at);
        assertThat(spec.target()).as("%s at byte %d", way, at).hasContent("old");
        assertThat(files()).containsExactly("print.bin");
      }
      assertFails(spec, bands, size - 1);
    }
  }

  private void assertFails(SinkSpec spec, List<Encoded> bands, long at) {
    SafeFile.Opener opener = FaultyChannel.after(at, new IOException("cable pulled"));
    assertThatThrownBy(
            () -> {
              try (Sink sink = Sinks.open(spec, target -> SafeFile.open(target, opener))) {
                for (int k = 0; k < bands.size(); k++) {
                  sink.append(k, bands.get(k));
                }
                sink.commit();
              }
            })
        .as("at byte %d", at)
        .isInstanceOf(DeliverException.class)
        .hasMessage(spec.target() + " cannot be written: the system says \"cable pulled\".");
  }

  @Test
  void refusesBandsOutOfTurn() {
    for (Way way : ways()) {
      TestPicture picture = picture(way, 8, 24);
      SinkSpec spec = spec(way, picture, 8);
      try (Sink sink = Sinks.open(spec)) {
        List<Encoded> all = encodeAll(sink, spec, picture);
        assertThatThrownBy(() -> sink.append(1, all.get(1)))
            .isInstanceOf(IllegalStateException.class);
        sink.append(0, all.get(0));
        assertThatThrownBy(() -> sink.append(0, all.get(0)))
            .isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(sink::commit).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> sink.encode(1, picture.rows(spec.layout().area(0))))
            .isInstanceOf(IllegalArgumentException.class);
        sink.append(1, all.get(1));
        sink.append(2, all.get(2));
        assertThatThrownBy(() -> sink.append(3, all.get(2)))
            .isInstanceOf(IllegalStateException.class);
        sink.commit();
        assertThatThrownBy(sink::commit).isInstanceOf(IllegalStateException.class);
        sink.close();
        assertThatThrownBy(() -> sink.append(0, all.get(0)))
            .isInstanceOf(IllegalStateException.class);
      }
      assertThat(spec.target()).isRegularFile();
    }
  }

  /** What a thread allocates in all is no less than what it holds at once. */
  @Test
  void anEncodeKeepsToTheMemoryItNames() throws ReflectiveOperationException {
    for (Way way : ways()) {
      Random random = new Random(1);
      TestPicture picture =
          TestPicture.of(
              700, 64, way.depth(), NamedSpace.SRGB, (x, y, c) -> random.nextInt(1 << way.depth()));
      SinkSpec spec = spec(way, picture, 64);
      Planes rows = picture.rows(Region.ofSize(700, 64));
      try (Sink sink = Sinks.open(spec)) {
        sink.encode(0, rows); // classes are loaded
        long asking = -Allocated.bytes() + Allocated.bytes();
        long before = Allocated.bytes();
        Encoded encoded = sink.encode(0, rows);
        long used = Allocated.bytes() - before - asking;
        assertThat(used).as("%s", way).isLessThanOrEqualTo(sink.encodeBytes(64));
        assertThat(encoded.heldBytes()).isLessThanOrEqualTo(sink.encodeBytes(64));
      }
    }
  }
}
