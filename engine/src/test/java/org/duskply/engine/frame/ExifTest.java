package org.duskply.engine.frame;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import org.duskply.engine.testing.PngFile;
import org.duskply.engine.testing.TiffFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The camera's record (EXIF 2.3) in files built by the test, sound and broken. */
class ExifTest {
  private static byte[] text(String s) {
    return (s + "\0").getBytes(StandardCharsets.US_ASCII);
  }

  private static TiffFile plain() {
    return new TiffFile(4, 3, 3, 16, (x, y, c) -> x + y + c);
  }

  private static TiffFile shot(ByteOrder order) {
    TiffFile file = plain().order(order);
    byte[] iso = order == ByteOrder.BIG_ENDIAN ? new byte[] {1, 0x40} : new byte[] {0x40, 1};
    return file.raw(271, 2, 6, text("Maker"))
        .raw(272, 2, 9, text("Maker X1"))
        .raw(306, 2, 20, text("2001:01:01 00:00:00"))
        .camera(33434, 5, 1, file.rational(1, 30))
        .camera(33437, 5, 1, file.rational(80, 10))
        .camera(34855, 3, 1, iso)
        .camera(36867, 2, 20, text("2031:06:14 21:47:09"));
  }

  private static FrameInfo open(TiffFile file) {
    return FrameSources.open(Disk.file("shot.tif", file.bytes())).info();
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void aRecordIsRead(boolean big) {
    FrameInfo info = open(shot(big ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN));
    assertThat(info.exif())
        .isEqualTo(
            new Exif(LocalDateTime.of(2031, 6, 14, 21, 47, 9), 1 / 30.0, 8.0, 320, "Maker X1"));
    assertThat(info.notices()).isEmpty();
  }

  @Test
  void aFileWithoutARecordHasNone() {
    assertThat(open(plain()).exif()).isEqualTo(Exif.NONE);
  }

  @Test
  void brokenValuesAreLeftOutWithOneNotice() {
    FrameInfo info =
        open(
            shot(ByteOrder.LITTLE_ENDIAN)
                .camera(33434, 5, 0x40000000, new byte[8])
                .camera(36867, 2, 0x7fffffff, new byte[] {0, 0, 0, 127})
                .camera(33437, 5, 1, new byte[8]));
    assertThat(info.exif().iso()).isEqualTo(320);
    assertThat(info.exif().fNumber()).isNull();
    assertThat(info.exif().exposureSeconds()).isNull();
    assertThat(info.exif().taken()).isEqualTo(LocalDateTime.of(2001, 1, 1, 0, 0));
    assertThat(info.notices())
        .containsExactly("Part of the camera record (EXIF) is damaged and was not used.");
  }

  @Test
  void aLinkToNowhereIsNoticed() {
    FrameInfo info = open(plain().longs(34665, 0x7ffffff0L));
    assertThat(info.notices())
        .containsExactly("Part of the camera record (EXIF) is damaged and was not used.");
  }

  @Test
  void datesThatAreNoneAreNone() {
    for (String date :
        new String[] {"0000:00:00 00:00:00", "    :  :     :  :  ", "2031:13:14 21:47:09"}) {
      assertThat(open(plain().raw(306, 2, 20, text(date))).exif().taken()).isNull();
    }
  }

  @Test
  void aPngCarriesItBeforeOrBehindItsPixels() {
    byte[] record = shot(ByteOrder.BIG_ENDIAN).bytes();
    PngFile png = new PngFile(4, 3, 2, 8, (x, y, c) -> x);
    FrameInfo info =
        FrameSources.open(Disk.file("shot.png", png.later("eXIf", record).bytes())).info();
    assertThat(info.exif().iso()).isEqualTo(320);
    PngFile bad = new PngFile(4, 3, 2, 8, (x, y, c) -> x).chunk("eXIf", new byte[] {1, 2, 3});
    assertThat(FrameSources.open(Disk.file("bad.png", bad.bytes())).info().notices())
        .containsExactly("The camera record (EXIF) is damaged and was not used.");
  }
}
