package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * TIFFs against TIFF 6.0, the JDK, TwelveMonkeys, metadata-extractor, libtiff, exiftool, libvips.
 */
class TiffSinkTest extends SinkContract {
  private static final Way DEEP = new Way(Format.TIFF, 16, Compress.DEFLATE);

  @Override
  List<Way> ways() {
    return List.of(
        DEEP,
        new Way(Format.TIFF, 8, Compress.DEFLATE),
        new Way(Format.TIFF, 16, Compress.LZW),
        new Way(Format.TIFF, 8, Compress.LZW),
        new Way(Format.TIFF, 16, Compress.NONE),
        new Way(Format.TIFF, 8, Compress.NONE));
  }

  @Override
  void readBack(Path file, TestPicture picture, Way way) throws IOException {
    List<int[]> seen = new ArrayList<>(Readers.imageIo(file, "TIFF", "com.twelvemonkeys."));
    assertThat(seen).isNotEmpty();
    if (way.depth() == 8
        || way.compress() == Compress.NONE) { // the JDK's own cannot undo a predictor in 16 bit
      assertThat(seen.addAll(Readers.imageIo(file, "TIFF", "com.sun."))).isTrue();
    }
    seen.add(Readers.own(file));
    for (int[] codes : seen) {
      assertThat(codes).as("%s", way).isEqualTo(picture.codes);
    }
  }

  @Override
  byte[] profileIn(Path file) throws Exception {
    Metadata metadata = ImageMetadataReader.readMetadata(file.toFile());
    ExifIFD0Directory directory = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
    assertThat(metadata.getFirstDirectoryOfType(com.drew.metadata.icc.IccDirectory.class))
        .isNotNull();
    assertThat(directory.getErrors()).isEmpty();
    byte[] bytes = Files.readAllBytes(file);
    long[] entry = entries(bytes).get(34675);
    byte[] profile = new byte[(int) entry[1]];
    System.arraycopy(bytes, (int) entry[2], profile, 0, profile.length);
    return profile;
  }

  /** Tag → type, count, value or offset; by TIFF 6.0 section 2. */
  private static Map<Integer, long[]> entries(byte[] file) {
    ByteBuffer in = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
    assertThat(in.getShort(0)).isEqualTo((short) 0x4949);
    assertThat(in.getShort(2)).isEqualTo((short) 42);
    int at = in.getInt(4);
    assertThat(at % 2).as("a directory begins on a word").isZero();
    Map<Integer, long[]> entries = new TreeMap<>();
    int count = in.getShort(at);
    int last = -1;
    for (int i = 0; i < count; i++) {
      int e = at + 2 + 12 * i;
      int tag = in.getShort(e) & 0xFFFF;
      assertThat(tag).as("tags ascend").isGreaterThan(last);
      last = tag;
      int type = in.getShort(e + 2);
      boolean aShort = type == 3 && in.getInt(e + 4) == 1;
      entries.put(
          tag,
          new long[] {
            type,
            in.getInt(e + 4),
            aShort ? in.getShort(e + 8) & 0xFFFF : in.getInt(e + 8) & 0xFFFFFFFFL
          });
    }
    assertThat(in.getInt(at + 2 + 12 * count)).as("no second image").isZero();
    return entries;
  }

  @Test
  void isABaselineTiff() throws IOException {
    TestPicture picture = TestPicture.noisy(300, 200, 16, NamedSpace.SRGB, 3);
    SinkSpec spec = spec(DEEP, picture, 64);
    picture.deliver(spec);
    Map<Integer, long[]> tags = entries(Files.readAllBytes(spec.target()));
    // Tags and values of TIFF 6.0 sections 3 to 8 and 14; 8 is deflate by the later supplement.
    int[][] singles = {
      {256, 300}, {257, 200}, {259, 8}, {262, 2}, {274, 1}, {277, 3}, {284, 1}, {296, 2}, {317, 2}
    };
    for (int[] single : singles) {
      assertThat(tags.get(single[0])[2]).as("tag %d", single[0]).isEqualTo(single[1]);
    }
    assertThat(tags).doesNotContainKey(306); // DateTime: there is no clock
    assertThat(tags.keySet()).contains(258, 273, 278, 279, 282, 283, 305, 339, 34675);
  }

  @ParameterizedTest
  @CsvSource({
    "6000, 16, 64, 4", // 36000 bytes a row: 7 would fit, 4 divides 64
    "600, 16, 64, 64",
    "6000, 8, 64, 8",
    "100000, 16, 64, 1",
    "6000, 16, 7, 7",
    "6000, 16, 11, 1"
  })
  void stripsDivideABand(int width, int depth, int bandRows, int rows) {
    BandLayout layout = new BandLayout(width, 4000, depth, bandRows);
    assertThat(TiffFile.stripRows(layout)).isEqualTo(rows);
  }

  @Test
  void metadataReadersFindTheTags() throws Exception {
    TestPicture picture = TestPicture.noisy(30, 20, 16, NamedSpace.SRGB, 3);
    SinkSpec spec = spec(DEEP, picture, 64);
    picture.deliver(spec);
    ExifIFD0Directory tags =
        ImageMetadataReader.readMetadata(spec.target().toFile())
            .getFirstDirectoryOfType(ExifIFD0Directory.class);
    assertThat(tags.getRational(ExifIFD0Directory.TAG_X_RESOLUTION).intValue()).isEqualTo(300);
    assertThat(tags.getRational(ExifIFD0Directory.TAG_Y_RESOLUTION).intValue()).isEqualTo(300);
    assertThat(tags.getInt(ExifIFD0Directory.TAG_RESOLUTION_UNIT)).isEqualTo(2);
    assertThat(tags.getString(ExifIFD0Directory.TAG_SOFTWARE)).isEqualTo("Duskply");
  }

  @Test
  void libtiffReadsItWithoutAWarning() throws Exception {
    for (Way way : ways()) {
      TestPicture picture = TestPicture.noisy(211, 150, way.depth(), NamedSpace.A98_RGB, 3);
      SinkSpec spec = spec(way, NamedSpace.A98_RGB, 211, 150, 64);
      picture.deliver(spec);
      String said = Tool.run("tiffinfo", "-D", spec.target());
      assertThat(said)
          .contains("Image Width: 211 Image Length: 150", "Resolution: 300, 300 pixels/inch")
          .contains("Bits/Sample: " + way.depth(), "Photometric Interpretation: RGB color")
          .contains("Samples/Pixel: 3", "ICC Profile: <present>", "Software: Duskply")
          .doesNotContainIgnoringCase("warning")
          .doesNotContainIgnoringCase("error");
      if (way.compress() != Compress.NONE) {
        assertThat(said).contains("Predictor: horizontal differencing 2");
      }
      assertThat(said)
          .contains(
              switch (way.compress()) {
                case NONE -> "Compression Scheme: None";
                case LZW -> "Compression Scheme: LZW";
                case DEFLATE -> "Compression Scheme: AdobeDeflate"; // as libtiff calls number 8
              });
    }
  }

  @Test
  void exiftoolFindsNothingWrong() throws Exception {
    List<Path> files = new ArrayList<>();
    for (Way way : ways()) {
      TestPicture picture = TestPicture.noisy(40, 30, way.depth(), NamedSpace.PROPHOTO_RGB, 3);
      SinkSpec spec = spec(way, NamedSpace.PROPHOTO_RGB, 40, 30, 64);
      picture.deliver(spec);
      files.add(Files.move(spec.target(), folder.resolve(files.size() + ".tif")));
    }
    List<List<String>> tags =
        Tool.exif(files, "ProfileDescription", "XResolution", "ImageSize", "BitsPerSample");
    List<String> warnings = Tool.exifWarnings(files);
    for (int i = 0; i < files.size(); i++) {
      int depth = ways().get(i).depth();
      assertThat(tags.get(i))
          .containsExactly(
              "Duskply prophoto-rgb", "300", "40 30", depth + " " + depth + " " + depth);
      boolean deflated = ways().get(i).compress() == Compress.DEFLATE;
      // Deflate came with a supplement to TIFF 6.0, whose own list of compressions it holds us to.
      assertThat(warnings.get(i))
          .containsPattern(
              deflated
                  ? "Validate *: 1 Warning\\RWarning *: Invalid value for IFD0 tag 0x0103 Compression"
                  : "Validate *: OK");
    }
  }

  @Test
  void libvipsReadsTheSameCodes() throws Exception {
    for (Way way : ways()) {
      TestPicture picture = TestPicture.noisy(111, 150, way.depth(), NamedSpace.SRGB, 3);
      SinkSpec spec = spec(way, picture, 32);
      picture.deliver(spec);
      assertThat(Readers.vips(spec.target(), way.depth())).isEqualTo(picture.codes);
    }
  }

  /** 40000 × 20000 × 6 bytes are 4.8 GB: known before a byte is written. */
  @Test
  void refusesWhatItsOffsetsCannotReach() throws IOException {
    SinkSpec spec =
        spec(new Way(Format.TIFF, 16, Compress.NONE), NamedSpace.SRGB, 40_000, 20_000, 64);
    assertThatThrownBy(() -> Sinks.open(spec))
        .isInstanceOf(DeliverException.class)
        .hasMessage(
            spec.target()
                + " would be larger than 4 GB, the most that a TIFF can hold; deliver it smaller,"
                + " in 8 bit or as PNG.");
    assertThat(folder).isEmptyDirectory();
  }

  /** What deflate makes of a picture is known when it is there: the channel says how far it is. */
  @Test
  void refusesAPackedFileThatGrowsTooLarge() throws IOException {
    TestPicture picture = TestPicture.noisy(40, 30, 16, NamedSpace.SRGB, 3);
    SinkSpec spec = spec(DEEP, picture, 30);
    Files.writeString(spec.target(), "old");
    SafeFile.Opener almostFull = part -> new Offset(FaultyChannel.plain(part), 0xFFFF_FFFFL - 2000);
    try (Sink sink = Sinks.open(spec, target -> SafeFile.open(target, almostFull))) {
      Encoded encoded = sink.encode(0, picture.rows(spec.layout().area(0)));
      assertThatThrownBy(() -> sink.append(0, encoded)).hasMessageContaining("larger than 4 GB");
    }
    assertThat(folder.toFile().list()).containsExactly("print.bin");
    assertThat(spec.target()).hasContent("old");
  }

  /** A channel that claims to hold more than it does. */
  private record Offset(SeekableByteChannel inner, long by) implements SeekableByteChannel {
    @Override
    public long size() throws IOException {
      return inner.size() + by;
    }

    @Override
    public SeekableByteChannel position(long p) throws IOException {
      inner.position(Math.max(0, p - by));
      return this;
    }

    @Override
    public long position() throws IOException {
      return inner.position() + by;
    }

    @Override
    public int write(ByteBuffer src) throws IOException {
      return inner.write(src);
    }

    @Override
    public int read(ByteBuffer dst) throws IOException {
      return inner.read(dst);
    }

    @Override
    public SeekableByteChannel truncate(long size) throws IOException {
      inner.truncate(size);
      return this;
    }

    @Override
    public boolean isOpen() {
      return inner.isOpen();
    }

    @Override
    public void close() throws IOException {
      inner.close();
    }
  }
}
