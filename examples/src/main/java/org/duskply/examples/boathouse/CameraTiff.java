package org.duskply.examples.boathouse;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.zip.Deflater;
import org.duskply.engine.colour.IccWriter;

/**
 * Writes one frame as a 16-bit TIFF 6.0 file, as a raw converter would: deflated strips of 64 rows
 * with horizontal differences (predictor 2), the profile embedded, the shot's settings in Exif
 * tags. Strips are appended in order; the directory follows them and the header is set last, so
 * that a broken run leaves no file that looks whole.
 */
final class CameraTiff implements AutoCloseable {
  static final int ROWS_PER_STRIP = 64;
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ss", Locale.ROOT);
  private static final int SHORT = 3;
  private static final int LONG = 4;

  private final Shot shot;
  private final int width;
  private final int height;
  private final SeekableByteChannel channel;
  private final List<Integer> offsets = new ArrayList<>();
  private final List<Integer> sizes = new ArrayList<>();

  CameraTiff(Path file, Shot shot, int width, int height) throws IOException {
    this.shot = shot;
    this.width = width;
    this.height = height;
    channel =
        Files.newByteChannel(
            file,
            StandardOpenOption.CREATE,
            StandardOpenOption.WRITE,
            StandardOpenOption.TRUNCATE_EXISTING);
    channel.write(ByteBuffer.allocate(8));
  }

  /** The bytes of one strip; may be called from any thread. */
  static byte[] strip(ShotFrame rows) {
    int samples = 3 * rows.width();
    ByteBuffer plain =
        ByteBuffer.allocate(2 * samples * rows.height()).order(ByteOrder.LITTLE_ENDIAN);
    char[] codes = rows.codes();
    for (int y = 0; y < rows.height(); y++) {
      int row = y * samples;
      for (int i = 0; i < samples; i++) {
        plain.putChar((char) (i < 3 ? codes[row + i] : codes[row + i] - codes[row + i - 3]));
      }
    }
    return deflate(plain.array());
  }

  private static byte[] deflate(byte[] plain) {
    Deflater deflater = new Deflater(1);
    try {
      deflater.setInput(plain);
      deflater.finish();
      ByteArrayOutputStream out = new ByteArrayOutputStream(plain.length);
      byte[] piece = new byte[1 << 16];
      while (!deflater.finished()) {
        out.write(piece, 0, deflater.deflate(piece));
      }
      return out.toByteArray();
    } finally {
      deflater.end();
    }
  }

  void append(byte[] strip) throws IOException {
    offsets.add((int) channel.position());
    sizes.add(strip.length);
    put(ByteBuffer.wrap(strip));
  }

  /** Writes the directories, then the header that makes the file whole. */
  void finish() throws IOException {
    int exif = directory(exifTags());
    int main = directory(mainTags(exif));
    channel.position(0);
    ByteBuffer header = ByteBuffer.allocate(8).order(ByteOrder.LITTLE_ENDIAN);
    put(header.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(main).flip());
  }

  private List<Tag> mainTags(int exif) {
    List<Tag> tags = new ArrayList<>();
    tags.add(Tag.numbers(256, LONG, width));
    tags.add(Tag.numbers(257, LONG, height));
    tags.add(Tag.numbers(258, SHORT, 16, 16, 16));
    tags.add(Tag.numbers(259, SHORT, 8));
    tags.add(Tag.numbers(262, SHORT, 2));
    tags.add(Tag.text(271, "Tarnside"));
    tags.add(Tag.text(272, "Tarnside Plate 24"));
    tags.add(Tag.numbers(273, LONG, ints(offsets)));
    tags.add(Tag.numbers(274, SHORT, 1));
    tags.add(Tag.numbers(277, SHORT, 3));
    tags.add(Tag.numbers(278, LONG, ROWS_PER_STRIP));
    tags.add(Tag.numbers(279, LONG, ints(sizes)));
    tags.add(Tag.ratio(282, 300, 1));
    tags.add(Tag.ratio(283, 300, 1));
    tags.add(Tag.numbers(284, SHORT, 1));
    tags.add(Tag.numbers(296, SHORT, 2));
    tags.add(Tag.text(306, TIME.format(Evening.time(shot))));
    tags.add(Tag.numbers(317, SHORT, 2));
    tags.add(Tag.numbers(34665, LONG, exif));
    tags.add(new Tag(34675, 7, IccWriter.profile(Sensor.PROFILE), 1));
    return tags;
  }

  private List<Tag> exifTags() {
    List<Tag> tags = new ArrayList<>();
    tags.add(Tag.ratio(33434, (int) Math.round(shot.seconds() * 1000), 1000));
    tags.add(Tag.ratio(33437, (int) Math.round(shot.aperture() * 10), 10));
    tags.add(Tag.numbers(34855, SHORT, shot.iso()));
    tags.add(new Tag(36864, 7, "0232".getBytes(StandardCharsets.US_ASCII), 1));
    tags.add(Tag.text(36867, TIME.format(Evening.time(shot))));
    tags.add(Tag.numbers(37385, SHORT, shot.flash() == Shot.NO_FLASH ? 0 : 1));
    tags.add(Tag.ratio(37386, 35, 1));
    return tags;
  }

  private static int[] ints(List<Integer> list) {
    return list.stream().mapToInt(Integer::intValue).toArray();
  }

  /** Appends a directory, long values after it, and returns where it stands. */
  private int directory(List<Tag> tags) throws IOException {
    if ((channel.position() & 1) == 1) {
      put(ByteBuffer.allocate(1));
    }
    int at = (int) channel.position();
    int size = 2 + 12 * tags.size() + 4;
    ByteBuffer head = ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
    ByteArrayOutputStream tail = new ByteArrayOutputStream();
    head.putShort((short) tags.size());
    for (Tag tag : tags) {
      head.putShort((short) tag.number()).putShort((short) tag.type());
      head.putInt(tag.bytes().length / tag.unit());
      if (tag.bytes().length <= 4) {
        head.put(java.util.Arrays.copyOf(tag.bytes(), 4));
      } else {
        head.putInt(at + size + tail.size());
        tail.writeBytes(tag.bytes());
        if ((tail.size() & 1) == 1) {
          tail.write(0);
        }
      }
    }
    head.putInt(0);
    put(head.flip());
    put(ByteBuffer.wrap(tail.toByteArray()));
    return at;
  }

  private void put(ByteBuffer bytes) throws IOException {
    while (bytes.hasRemaining()) {
      channel.write(bytes);
    }
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }

  /** One entry of a directory: its number, the type of its values, their bytes, bytes a value. */
  @SuppressWarnings("ArrayRecordComponent")
  private record Tag(int number, int type, byte[] bytes, int unit) {
    static Tag numbers(int number, int type, int... values) {
      int unit = type == SHORT ? 2 : 4;
      ByteBuffer out = ByteBuffer.allocate(unit * values.length).order(ByteOrder.LITTLE_ENDIAN);
      for (int v : values) {
        if (type == SHORT) {
          out.putShort((short) v);
        } else {
          out.putInt(v);
        }
      }
      return new Tag(number, type, out.array(), unit);
    }

    static Tag ratio(int number, int over, int under) {
      ByteBuffer out = ByteBuffer.allocate(8).order(ByteOrder.LITTLE_ENDIAN);
      return new Tag(number, 5, out.putInt(over).putInt(under).array(), 8);
    }

    static Tag text(int number, String text) {
      return new Tag(number, 2, (text + "\0").getBytes(StandardCharsets.US_ASCII), 1);
    }
  }
}
