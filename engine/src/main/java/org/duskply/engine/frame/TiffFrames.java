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
    TiffPicture picture = TiffPicture.read(file, first);
    List<String> notices = new ArrayList<>();
    ExifReader exif = new ExifReader(notices);
    exif.directory(file, form, first);
    String why = picture.whyNotPlain();
    if (why != null) {
      throw file.fail("holds " + why);
    }
    FrameInfo info =
        new FrameInfo(
            picture.width(),
            picture.height(),
            picture.channels(),
            picture.alpha(),
            picture.bits() == 8 ? Samples.Kind.BYTES : Samples.Kind.SHORTS,
            picture.bits() == 8 ? 255 : 65535,
            profile(first, notices),
            null,
            exif.exif(),
            List.copyOf(notices));
    return new TiffSource(file, form, picture, TiffBlocks.read(file, first, picture), info);
  }

  private static byte @Nullable [] profile(
      TiffDirectory first, List<String> notices) {
    try {
      byte[] profile = first.bytes(TiffTag.ICC_PROFILE, FrameLimits.MAX_PROFILE_BYTES);
      return profile.length == 0 ? null : profile;
    } catch (FrameException e) {
      notices.add("The embedded colour profile is damaged and was not used.");
      return null;
    }
  }
}
