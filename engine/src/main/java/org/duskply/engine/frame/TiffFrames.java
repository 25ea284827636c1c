package org.duskply.engine.frame;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Opens TIFF files: the plain ones with our own reader, the others through the general one. */
final class TiffFrames {
  private TiffFrames() {}

  /** Opens the first picture of the file. */
  static FrameSource open(FrameFile file, TiffForm form) {
    TiffDirectory first = new TiffDirectory(file, form, form.first());
    List<String> notices = new ArrayList<>();
    checkFirst(file, form, first, notices);
    TiffPicture picture = TiffPicture.read(file, first);
    ExifReader exif = new ExifReader(notices);
    exif.directory(file, form, first);
    TiffKind kind = TiffKind.of(file, first, picture, notices);
    TiffBlocks blocks = TiffBlocks.read(file, first, picture, file.tolerant());
    Turn turn = Turn.of(exif.orientation(), picture.width(), picture.height());
    byte[] profile = profile(picture, first, notices);
    FrameInfo info =
        new FrameInfo(
            turn.width(),
            turn.height(),
            kind.channels(),
            picture.alpha(),
            kind.samples(),
            kind.fullScale(),
            profile,
            null,
            exif.exif(),
            List.copyOf(notices));
    String why = whyNotPlain(file, picture, blocks);
    if (why != null) {
      if (picture.compression() == TiffPicture.JPEG) {
        TiffJpegPieces.check(file, blocks);
      }
      return new WholeFrame(
          file,
          info,
          turn,
          "TIFF with " + why + ": decoded once, whole",
          part ->
              (long) picture.width() * picture.height() * picture.stored() * kind.rasterBytes()
                  + FrameLimits.MAX_UNIT_BYTES,
          new TiffRasterDecoder(picture, kind, TiffExcerpt.read(file, form, first)));
    }
    if (exif.orientation() == 1) {
      return new TiffSource(file, form, picture, kind, blocks, info);
    }
    return turned(file, info, turn, new TiffSource(file, form, picture, kind, blocks, info));
  }

  private static FrameSource turned(FrameFile file, FrameInfo info, Turn turn, TiffSource stored) {
    return new WholeFrame(
        file,
        info,
        turn,
        "TIFF stored on its side: decoded once, whole, and turned upright",
        part -> stored.workingBytes() + stored.cursorBytes() + FrameLimits.MAX_UNIT_BYTES,
        stored::readAll);
  }

  /** Why our own reader cannot take this file, or null if it can. */
  private static @Nullable String whyNotPlain(
      FrameFile file, TiffPicture picture, TiffBlocks blocks) {
    String why = picture.whyNotPlain();
    if (why == null && picture.compression() == TiffPicture.LZW && oldLzw(file, blocks)) {
      return "LZW compression of an older form";
    }
    return why;
  }

  /** Codes of the form before TIFF 6.0 run from the lowest bit: Clear begins with a zero byte. */
  private static boolean oldLzw(FrameFile file, TiffBlocks blocks) {
    byte[] two = new byte[2];
    if (blocks.lengths()[0] >= 2) {
      file.read(blocks.offsets()[0], two, 0, 2);
    }
    return two[0] == 0 && (two[1] & 1) == 1;
  }

  /** Camera files keep a small preview in the first place and the picture elsewhere. */
  private static void checkFirst(
      FrameFile file, TiffForm form, TiffDirectory first, List<String> notices) {
    boolean preview = (first.number(TiffTag.NEW_SUBFILE_TYPE, 0) & 1) != 0;
    if (preview && first.has(TiffTag.SUB_IFDS)) {
      throw file.fail("is a camera's raw file; develop it to a 16-bit TIFF first");
    }
    if (preview || (first.next() != 0 && holdsPicture(file, form, first.next()))) {
      notices.add("The file holds more than one picture; the first is used.");
    }
  }

  private static boolean holdsPicture(FrameFile file, TiffForm form, long at) {
    try {
      TiffDirectory second = new TiffDirectory(file, form, at);
      return second.has(TiffTag.IMAGE_WIDTH)
          && (second.number(TiffTag.NEW_SUBFILE_TYPE, 0) & 1) == 0;
    } catch (FrameException e) {
      return false;
    }
  }

  private static byte @Nullable [] profile(
      TiffPicture picture, TiffDirectory first, List<String> notices) {
    if (picture.lab()) {
      return PlainProfile.rgb(PlainProfile.SRGB_CHROMATICITIES, 1);
    }
    try {
      byte[] profile = first.bytes(TiffTag.ICC_PROFILE, FrameLimits.MAX_PROFILE_BYTES);
      return profile.length == 0 ? null : profile;
    } catch (FrameException e) {
      notices.add("The embedded colour profile is damaged and was not used.");
      return null;
    }
  }
}
