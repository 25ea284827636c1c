package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.png.PngDirectory;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.zip.CRC32;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Format;
import org.junit.jupiter.api.Test;

/**
 * PNGs against the third edition of the standard, the JDK, metadata-extractor, exiftool, libvips.
 */
class PngSinkTest extends SinkContract {
  private static final Way DEEP = new Way(Format.PNG, 16, Compress.NONE);

  private record Chunk(String type, byte[] data) {}

  @Override
  List<Way> ways() {
    return List.of(DEEP, new Way(Format.PNG, 8, Compress.NONE));
  }

  @Override
  void readBack(Path file, TestPicture picture, Way way) throws IOException {
    List<int[]> seen = Readers.imageIo(file, "PNG");
    assertThat(seen).isNotEmpty();
    for (int[] codes : seen) {
      assertThat(codes).as("%s", way).isEqualTo(picture.codes);
    }
  }

  @Override
  byte[] profileIn(Path file) throws Exception {
    assertThat(
            ImageMetadataReader.readMetadata(file.toFile())
                .getFirstDirectoryOfType(com.drew.metadata.icc.IccDirectory.class))
        .isNotNull();
    byte[] data = chunk(chunks(file), "iCCP").data();
    int end = 0;
    while (data[end] != 0) {
      end++;
    }
    assertThat(end).isBetween(1, 79);
    assertThat(data[end + 1]).as("method").isZero();
    return inflate(Arrays.copyOfRange(data, end + 2, data.length));
  }

  /** Section 5.3, every CRC checked. */
  private static List<Chunk> chunks(Path file) throws IOException {
    ByteBuffer in = ByteBuffer.wrap(Files.readAllBytes(file));
    assertThat(in.getLong()).isEqualTo(0x89504E470D0A1A0AL);
    List<Chunk> chunks = new ArrayList<>();
    while (in.hasRemaining()) {
      byte[] data = new byte[in.getInt()];
      byte[] type = new byte[4];
      in.get(type).get(data);
      CRC32 crc = new CRC32();
      crc.update(type);
      crc.update(data);
      assertThat(in.getInt()).isEqualTo((int) crc.getValue());
      chunks.add(new Chunk(new String(type, StandardCharsets.US_ASCII), data));
    }
    return chunks;
  }

  private static Chunk chunk(List<Chunk> chunks, String type) {
    return chunks.stream().filter(c -> c.type().equals(type)).findFirst().orElseThrow();
  }

  /** The whole of one zlib stream and nothing after it; the inflater checks the Adler-32. */
  private static byte[] inflate(byte[] stream) throws DataFormatException {
    Inflater inflater = new Inflater();
    inflater.setInput(stream);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] buffer = new byte[1 << 16];
    while (!inflater.finished()) {
      int count = inflater.inflate(buffer);
      assertThat(count > 0 || inflater.finished()).as("the stream has an end").isTrue();
      out.write(buffer, 0, count);
    }
    assertThat(inflater.getRemaining()).isZero();
    inflater.end();
    return out.toByteArray();
  }

  /** Noise that does not pack, so that a band takes several chunks. */
  @Test
  void isOneStreamInBoundedChunks() throws Exception {
    Random random = new Random(4);
    TestPicture picture =
        TestPicture.of(801, 150, 16, NamedSpace.SRGB, (x, y, c) -> random.nextInt(65536));
    SinkSpec spec = spec(DEEP, picture, 64);
    picture.deliver(spec);
    List<Chunk> chunks = chunks(spec.target());
    List<String> types = chunks.stream().map(Chunk::type).toList();
    assertThat(types.stream().distinct())
        .containsExactly("IHDR", "cICP", "iCCP", "pHYs", "tEXt", "eXIf", "IDAT", "IEND");
    ByteArrayOutputStream stream = new ByteArrayOutputStream();
    int count = 0;
    for (Chunk chunk : chunks) {
      if (chunk.type().equals("IDAT")) {
        assertThat(chunk.data().length).isBetween(1, PngFile.CHUNK_BYTES);
        stream.writeBytes(chunk.data());
        count++;
      }
    }
    assertThat(count).as("3 bands, 2 of them in 2 chunks, and the checksum").isEqualTo(6);
    assertThat(inflate(stream.toByteArray())).hasSize(150 * (1 + 801 * 6));
    readBack(spec.target(), picture, DEEP);
  }

  /**
   * Bands in several pieces, packed by zlib because they repeat themselves; rows beyond a piece.
   */
  @Test
  void piecesOfWhatRepeatsAndRowsOfAnyWidth() throws Exception {
    for (int depth : new int[] {8, 16}) {
      Way way = new Way(Format.PNG, depth, Compress.NONE);
      TestPicture tall =
          TestPicture.of(
              2000, 150, depth, NamedSpace.SRGB, (x, y, c) -> (x / 7 * 31 + y + c) % 251);
      TestPicture wide =
          TestPicture.of(
              60_000, 5, depth, NamedSpace.SRGB, (x, y, c) -> (x / 50 + 9 * y + c) % 240);
      TestPicture narrow =
          TestPicture.of(1, 200, depth, NamedSpace.SRGB, (x, y, c) -> (7 * y + c) % 256);
      for (TestPicture picture : List.of(tall, wide, narrow)) {
        SinkSpec spec = spec(way, picture, 64);
        picture.deliver(spec);
        assertThat(Files.size(spec.target())).isLessThan(picture.codes.length / 8 + 5000L);
        readBack(spec.target(), picture, way);
      }
    }
  }

  /** Sections 11.2.1, 11.3.2.6 (code points of ITU-T H.273), 11.3.4.3. */
  @Test
  void headSaysWhatItIs() throws IOException {
    for (NamedSpace space : NamedSpace.values()) {
      TestPicture picture = TestPicture.noisy(40, 30, 16, space, 3);
      SinkSpec spec = spec(DEEP, space, 40, 30, 64);
      picture.deliver(spec);
      List<Chunk> chunks = chunks(spec.target());
      assertThat(chunk(chunks, "IHDR").data())
          .containsExactly(0, 0, 0, 40, 0, 0, 0, 30, 16, 2, 0, 0, 0);
      ByteBuffer physical = ByteBuffer.wrap(chunk(chunks, "pHYs").data());
      assertThat(physical.getInt()).isEqualTo(11811); // 300 / 0.0254 = 11811.02
      assertThat(physical.getInt()).isEqualTo(11811);
      assertThat(physical.get()).as("metres").isEqualTo((byte) 1);
      List<String> types = chunks.stream().map(Chunk::type).toList();
      assertThat(types).doesNotContain("sRGB", "tIME"); // not beside iCCP; no clock
      switch (space) {
        case SRGB -> assertThat(chunk(chunks, "cICP").data()).containsExactly(1, 13, 0, 1);
        case DISPLAY_P3 -> assertThat(chunk(chunks, "cICP").data()).containsExactly(12, 13, 0, 1);
        default -> assertThat(types).doesNotContain("cICP");
      }
    }
  }

  @Test
  void metadataReadersFindTheSize() throws Exception {
    TestPicture picture = TestPicture.noisy(40, 30, 16, NamedSpace.SRGB, 3);
    SinkSpec spec = spec(DEEP, picture, 64);
    picture.deliver(spec);
    PngDirectory head =
        ImageMetadataReader.readMetadata(spec.target().toFile())
            .getFirstDirectoryOfType(PngDirectory.class);
    assertThat(head.getInt(PngDirectory.TAG_IMAGE_WIDTH)).isEqualTo(40);
    assertThat(head.getInt(PngDirectory.TAG_BITS_PER_SAMPLE)).isEqualTo(16);
  }

  @Test
  void exiftoolFindsNothingWrong() throws Exception {
    TestPicture picture = TestPicture.noisy(40, 30, 16, NamedSpace.DISPLAY_P3, 3);
    SinkSpec spec = spec(DEEP, NamedSpace.DISPLAY_P3, 40, 30, 64);
    picture.deliver(spec);
    assertThat(Tool.exif(spec.target(), "ProfileDescription", "PixelsPerUnitX", "Software"))
        .containsExactly("Duskply display-p3", "11811", "Duskply");
    assertThat(Tool.exifWarnings(spec.target())).containsPattern("Validate *: OK");
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
}
