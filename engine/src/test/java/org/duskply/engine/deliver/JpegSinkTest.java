package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.Metadata;
import com.drew.metadata.icc.IccDirectory;
import com.drew.metadata.jfif.JfifDirectory;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * JPEGs against ITU-T T.81, JFIF, the JDK, TwelveMonkeys, metadata-extractor, exiftool, libvips.
 */
class JpegSinkTest extends SinkContract {
  private static final Way WAY = new Way(Format.JPEG, 8, Compress.NONE);

  private record Segment(int marker, byte[] data) {}

  @Override
  List<Way> ways() {
    return List.of(WAY);
  }

  /**
   * Noise, which a JPEG is not made for, is off by a quarter of a quantiser's step in the mean. At
   * quality 0.95 the steps of T.81 annex K are a tenth: at most 12 for Y′ and 10 for Cb, which
   * reaches blue 1.772-fold.
   */
  @Override
  void readBack(Path file, TestPicture picture, Way way) throws IOException {
    List<int[]> seen = Readers.imageIo(file, "JPEG");
    assertThat(seen).isNotEmpty();
    for (int[] codes : seen) {
      assertThat(codes).hasSameSizeAs(picture.codes);
      long off = 0;
      for (int i = 0; i < codes.length; i++) {
        off += Math.abs(codes[i] - picture.codes[i]);
      }
      assertThat((double) off / codes.length).isLessThan(12 / 4.0 + 1.772 * 10 / 4);
    }
  }

  @Override
  byte[] profileIn(Path file) throws Exception {
    Metadata metadata = ImageMetadataReader.readMetadata(file.toFile());
    assertThat(metadata.getFirstDirectoryOfType(IccDirectory.class)).isNotNull();
    ByteArrayOutputStream profile = new ByteArrayOutputStream();
    int part = 0;
    for (Segment s : segments(file)) {
      if (s.marker() == 0xE2) {
        assertThat(new String(s.data(), 0, 12, StandardCharsets.US_ASCII))
            .isEqualTo("ICC_PROFILE\0");
        assertThat(s.data()[12]).isEqualTo((byte) ++part);
        profile.write(s.data(), 14, s.data().length - 14);
      }
    }
    return profile.toByteArray();
  }

  /** The segments up to the scan: T.81 annex B. */
  private static List<Segment> segments(Path file) throws IOException {
    ByteBuffer in = ByteBuffer.wrap(Files.readAllBytes(file));
    assertThat(in.getShort()).isEqualTo((short) 0xFFD8);
    List<Segment> segments = new ArrayList<>();
    int marker = 0;
    while (marker != 0xDA) {
      assertThat(in.get()).isEqualTo((byte) 0xFF);
      marker = in.get() & 0xFF;
      byte[] data = new byte[(in.getShort() & 0xFFFF) - 2];
      in.get(data);
      segments.add(new Segment(marker, data));
    }
    return segments;
  }

  private Path deliver(TestPicture picture) {
    SinkSpec spec = spec(WAY, picture, 64);
    picture.deliver(spec);
    return spec.target();
  }

  private static int worst(int[] a, int[] b) {
    int worst = 0;
    for (int i = 0; i < a.length; i++) {
      worst = Math.max(worst, Math.abs(a[i] - b[i]));
    }
    return worst;
  }

  @Test
  void isBaselineWithAllItsChroma() throws IOException {
    List<Segment> all = segments(deliver(TestPicture.noisy(50, 30, 8, NamedSpace.SRGB, 3)));
    List<Integer> markers = all.stream().map(Segment::marker).toList();
    assertThat(markers.subList(0, 3))
        .as("APP0 with JFIF, APP1 with EXIF, APP2 with the profile")
        .containsExactly(0xE0, 0xE1, 0xE2);
    byte[] frame = all.get(markers.indexOf(0xC0)).data(); // SOF0: baseline
    assertThat(Arrays.copyOf(frame, 6)).containsExactly(8, 0, 30, 0, 50, 3);
    assertThat(new byte[] {frame[7], frame[10], frame[13]})
        .as("4:4:4")
        .containsExactly(0x11, 0x11, 0x11);
    byte[] jfif = all.get(0).data();
    assertThat(new String(jfif, 0, 5, StandardCharsets.US_ASCII)).isEqualTo("JFIF\0");
    assertThat(Arrays.copyOfRange(jfif, 7, 12))
        .as("300 dots an inch")
        .containsExactly(1, 1, 44, 1, 44);
  }

  /** Reported of other writers: chroma is halved however high the quality. Error below 12 codes. */
  @Test
  void keepsRedLinesOnePixelWide() throws Exception {
    for (boolean upright : new boolean[] {true, false}) {
      TestPicture lines =
          TestPicture.of(
              64,
              64,
              8,
              NamedSpace.SRGB,
              (x, y, c) -> ((upright ? x : y) % 2 == 0 ? (c == 0 ? 200 : 30) : 128));
      Path file = deliver(lines);
      for (int[] codes : Readers.imageIo(file, "JPEG")) {
        assertThat(worst(codes, lines.codes)).isLessThan(12);
      }
      assertThat(worst(Readers.vips(file, 8), lines.codes)).isLessThan(12);
    }
  }

  /** ITU-T T.81 tables K.1 and K.2, in rows; from memory. */
  private static final int[][] ANNEX_K = {
    {
      16, 11, 10, 16, 24, 40, 51, 61, 12, 12, 14, 19, 26, 58, 60, 55, //
      14, 13, 16, 24, 40, 57, 69, 56, 14, 17, 22, 29, 51, 87, 80, 62, //
      18, 22, 37, 56, 68, 109, 103, 77, 24, 35, 55, 64, 81, 104, 113, 92, //
      49, 64, 78, 87, 103, 121, 120, 101, 72, 92, 95, 98, 112, 100, 103, 99
    },
    {
      17, 18, 24, 47, 99, 99, 99, 99, 18, 21, 26, 66, 99, 99, 99, 99, //
      24, 26, 56, 99, 99, 99, 99, 99, 47, 66, 99, 99, 99, 99, 99, 99, //
      99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, //
      99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99, 99
    }
  };

  /** What {@link JpegEncoder} says of quality: the tables of the standard times a factor. */
  @ParameterizedTest
  @CsvSource({"0, 50", "0.25, 2", "0.5, 1", "0.75, 0.5", "0.92, 0.16", "0.95, 0.1", "1, 0"})
  void qualityScalesTheTablesOfTheStandard(double quality, double factor) throws IOException {
    TestPicture picture = TestPicture.noisy(8, 8, 8, NamedSpace.SRGB, 3);
    SinkSpec spec = Specs.quality(Specs.of(folder, Format.JPEG, Compress.NONE, picture), quality);
    picture.deliver(spec);
    int tables = 0;
    for (Segment s : segments(spec.target())) {
      for (int at = 0; s.marker() == 0xDB && at < s.data().length; at += 65) {
        int[] standard = ANNEX_K[s.data()[at] & 0xF];
        for (int k = 0; k < 64; k++) {
          double exact = Math.max(1, Math.min(255, standard[zigzag(k)] * factor));
          // The factor is a float: a half may go either way.
          assertThat((double) (s.data()[at + 1 + k] & 0xFF))
              .as("table %d, coefficient %d", s.data()[at], k)
              .isBetween(exact - 0.5001, exact + 0.5001);
        }
        tables++;
      }
    }
    assertThat(tables).isEqualTo(2);
  }

  /** T.81 figure A.6: the place in rows of the k-th coefficient along the diagonals. */
  private static int zigzag(int k) {
    int left = k;
    for (int diagonal = 0; ; diagonal++) {
      int first = Math.max(0, diagonal - 7);
      int count = Math.min(diagonal, 7) - first + 1;
      if (left < count) {
        int down = diagonal % 2 == 0 ? diagonal - first - left : first + left;
        return 8 * down + diagonal - down;
      }
      left -= count;
    }
  }

  @Test
  void qualityDecidesSizeAndError() throws IOException {
    TestPicture picture = TestPicture.noisy(120, 120, 8, NamedSpace.SRGB, 3);
    long[] sizes = new long[3];
    double[] qualities = {0, 0.5, 1};
    for (int i = 0; i < 3; i++) {
      SinkSpec spec = Specs.quality(spec(WAY, picture, 64), qualities[i]);
      picture.deliver(spec);
      sizes[i] = Files.size(spec.target());
    }
    assertThat(sizes[0]).isLessThan(sizes[1] / 2);
    assertThat(sizes[1]).isLessThan(sizes[2] / 2);
    // Quality 1 divides by 1: what is left is rounding. In blue, Y′ + 1.772·Cb: up to 1.39 from the
    // codes of Y′CbCr, 0.29·√(1 + 1.772²) = 0.6 in the root mean square from coefficients, of which
    // 43,200 samples see 4.5 times as much, and ½ at the end: 4.6.
    for (int[] codes : Readers.imageIo(folder.resolve("print.bin"), "JPEG")) {
      assertThat(worst(codes, picture.codes)).isLessThanOrEqualTo(4);
    }
  }

  /** A profile of 100,000 bytes takes segments of 65519 and 34481 (ICC annex on embedding). */
  @Test
  void dividesALongProfile() throws Exception {
    byte[] profile = new byte[100_000];
    for (int i = 0; i < profile.length; i++) {
      profile[i] = (byte) (i * 7 + (i >> 8));
    }
    TestPicture picture = TestPicture.noisy(8, 8, 8, NamedSpace.SRGB, 1);
    SinkSpec spec = spec(WAY, picture, 8);
    byte[] bytes = new byte[8 * 8 * 3];
    try (SafeFile file = SafeFile.open(spec.target())) {
      JpegEncoder.write(bytes, spec, profile, file, () -> false);
      file.commit();
    }
    List<Integer> sizes =
        segments(spec.target()).stream()
            .filter(s -> s.marker() == 0xE2)
            .map(s -> s.data().length - 14)
            .toList();
    assertThat(sizes).containsExactly(65_519, 34_481);
    ByteArrayOutputStream joined = new ByteArrayOutputStream();
    for (Segment s : segments(spec.target())) {
      if (s.marker() == 0xE2) {
        joined.write(s.data(), 14, s.data().length - 14);
        assertThat(s.data()[13]).isEqualTo((byte) 2);
      }
    }
    assertThat(joined.toByteArray()).isEqualTo(profile);
  }

  @Test
  void stopsInTheMiddle() throws IOException {
    TestPicture picture = TestPicture.noisy(64, 512, 8, NamedSpace.SRGB, 3);
    SinkSpec spec = spec(WAY, picture, 512);
    AtomicInteger asked = new AtomicInteger();
    try (Sink sink = Sinks.open(spec)) {
      sink.append(0, sink.encode(0, picture.rows(spec.layout().area(0))));
      assertThatThrownBy(() -> sink.commit(() -> asked.incrementAndGet() >= 5))
          .isInstanceOf(CancellationException.class);
    }
    assertThat(asked).hasValue(5);
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void refusesWhatNoJpegHolds() {
    assertThatThrownBy(() -> Sinks.open(spec(WAY, NamedSpace.SRGB, 65_501, 10, 8)))
        .isInstanceOf(DeliverException.class)
        .hasMessageEndingWith("a JPEG is at most 65500 pixels wide and high.");
    assertThatThrownBy(() -> Sinks.open(spec(WAY, NamedSpace.SRGB, 60_000, 60_000, 8)))
        .isInstanceOf(DeliverException.class)
        .hasMessageEndingWith("a JPEG of 60000 × 60000 pixels cannot be made.");
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void namesTheWholePictureAsHeld() {
    SinkSpec spec = spec(WAY, NamedSpace.SRGB, 600, 400, 64);
    try (Sink sink = Sinks.open(spec)) {
      assertThat(sink.heldBytes()).isGreaterThanOrEqualTo(600L * 400 * 3);
    }
  }

  @Test
  void metadataReadersFindTheResolution() throws Exception {
    Path file = deliver(TestPicture.noisy(50, 30, 8, NamedSpace.SRGB, 3));
    JfifDirectory jfif =
        ImageMetadataReader.readMetadata(file.toFile())
            .getFirstDirectoryOfType(JfifDirectory.class);
    assertThat(jfif.getResX()).isEqualTo(300);
    assertThat(jfif.getResUnits()).isEqualTo(1);
  }

  @Test
  void exiftoolFindsNothingWrong() throws Exception {
    SinkSpec spec = spec(WAY, NamedSpace.A98_RGB, 40, 30, 64);
    TestPicture.noisy(40, 30, 8, NamedSpace.A98_RGB, 3).deliver(spec);
    assertThat(Tool.exif(spec.target(), "ProfileDescription", "XResolution", "YCbCrSubSampling"))
        .containsExactly("Duskply a98-rgb", "300", "1 1");
    assertThat(Tool.exifWarnings(spec.target())).containsPattern("Validate *: OK");
  }
}
