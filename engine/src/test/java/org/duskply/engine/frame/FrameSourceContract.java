package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.duskply.engine.pixel.Region;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What every frame source keeps, whatever its file. */
@Tag("bits")
abstract class FrameSourceContract {
  /** A source of several units. */
  abstract FrameSource source();

  /** The stored sample that must come out. */
  abstract double expected(int x, int y, int channel);

  @Test
  void unitsTileThePictureFromTheTopWithoutAGap() {
    FrameSource source = source();
    int y = 0;
    for (int u = 0; u < source.units(); u++) {
      Region area = source.unit(u);
      assertThat(area.left()).isZero();
      assertThat(area.right()).isEqualTo(source.info().width());
      assertThat(area.top()).isEqualTo(y);
      y = area.bottom();
    }
    assertThat(y).isEqualTo(source.info().height());
    assertThatThrownBy(() -> source.unit(source.units()))
        .isInstanceOf(IndexOutOfBoundsException.class);
    assertThatThrownBy(() -> source.unit(-1)).isInstanceOf(IndexOutOfBoundsException.class);
  }

  @Test
  void everySampleIsTheStoredOne() {
    FrameSource source = source();
    try (FrameReader reader = source.reader()) {
      for (int u = 0; u < source.units(); u++) {
        Samples samples = reader.read(u);
        assertThat(samples.area()).isEqualTo(source.unit(u));
        assertThat(samples.kind()).isEqualTo(source.info().kind());
        assertThat(samples.channels()).isEqualTo(source.info().channels());
        check(samples);
      }
    }
  }

  private void check(Samples samples) {
    Region area = samples.area();
    for (int y = area.top(); y < area.bottom(); y++) {
      for (int x = area.left(); x < area.right(); x++) {
        for (int c = 0; c < samples.channels(); c++) {
          double got = SamplesText.value(samples, x, y, c);
          if (got != expected(x, y, c)) {
            assertThat(got).as("sample %d of (%d, %d)", c, x, y).isEqualTo(expected(x, y, c));
          }
        }
      }
    }
  }

  @Test
  void aPartIsThatPartOfItsUnit() {
    FrameSource source = source();
    try (FrameReader reader = source.reader()) {
      for (int u = 0; u < source.units(); u++) {
        for (Region part : Parts.of(source.unit(u), u)) {
          Samples samples = reader.read(u, part);
          assertThat(samples.area()).isEqualTo(source.returned(u, part));
          assertThat(samples.area().hull(part)).as("all of the part").isEqualTo(samples.area());
          check(samples);
        }
      }
    }
  }

  @Test
  void aReaderForAPartReadsIt() {
    FrameSource source = source();
    Region whole = Region.ofSize(source.info().width(), source.info().height());
    for (Region part : Parts.of(whole, 1)) {
      assertThat(source.cursorBytes(part)).isBetween(0L, source.cursorBytes());
      assertThat(source.workingBytes(part)).isBetween(0L, source.workingBytes());
      try (FrameReader reader = source.reader(part)) {
        for (int u = 0; u < source.units(); u++) {
          Region wanted = source.unit(u).meet(part);
          if (!wanted.empty()) {
            Samples samples = reader.read(u, wanted);
            assertThat(samples.area()).isEqualTo(source.returned(u, wanted));
            check(samples);
          }
        }
      }
    }
  }

  @Test
  void anyOrderGivesTheSameSamples() {
    FrameSource source = source();
    List<String> inOrder = new ArrayList<>();
    try (FrameReader reader = source.reader()) {
      for (int u = 0; u < source.units(); u++) {
        inOrder.add(SamplesText.hash(reader.read(u)));
      }
    }
    try (FrameReader reader = source.reader()) {
      for (int u = source.units() - 1; u >= 0; u--) {
        assertThat(SamplesText.hash(reader.read(u))).isEqualTo(inOrder.get(u));
      }
      int skip = Math.max(1, source.units() / 2);
      for (int u : new int[] {0, skip % source.units(), 0, 0, source.units() - 1, 0}) {
        assertThat(SamplesText.hash(reader.read(u))).isEqualTo(inOrder.get(u));
      }
    }
  }

  @Test
  void whatIsHandedOutIsNotTouchedAgain() {
    FrameSource source = source();
    try (FrameReader reader = source.reader()) {
      Samples first = reader.read(0);
      String before = SamplesText.hash(first);
      SamplesText.spoil(reader.read(0));
      reader.read(source.units() - 1);
      assertThat(SamplesText.hash(first)).isEqualTo(before);
      assertThat(SamplesText.hash(reader.read(0))).isEqualTo(before);
    }
  }

  @Test
  void twoThreadsReadTheSame() throws Exception {
    FrameSource source = source();
    boolean shared = source.access() == FrameSource.Access.RANDOM;
    ExecutorService pool = Executors.newFixedThreadPool(2);
    try (FrameReader one = source.reader();
        FrameReader other = source.reader()) {
      List<Callable<List<String>>> both = new ArrayList<>();
      both.add(() -> all(source, one));
      both.add(() -> all(source, shared ? one : other));
      List<Future<List<String>>> done = pool.invokeAll(both);
      assertThat(done.get(0).get()).isEqualTo(done.get(1).get());
    } finally {
      pool.shutdownNow();
    }
  }

  private static List<String> all(FrameSource source, FrameReader reader) {
    List<String> hashes = new ArrayList<>();
    for (int u = 0; u < source.units(); u++) {
      hashes.add(SamplesText.hash(reader.read(u)));
    }
    return hashes;
  }

  @Test
  void theBytesItDeclaresFitItsAccess() {
    FrameSource source = source();
    assertThat(source.workingBytes()).isNotNegative();
    assertThat(source.cursorBytes())
        .as("one from the top down keeps its place, another nothing")
        .matches(b -> source.access() == FrameSource.Access.RANDOM ? b == 0 : b > 0);
    assertThat(source.reason()).isNotBlank();
  }

  @Test
  void aReaderCanBeClosedBeforeAndAfterReading() {
    source().reader().close();
    FrameReader reader = source().reader();
    reader.read(0);
    reader.close();
  }
}
