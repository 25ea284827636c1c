package org.duskply.engine.frame;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.duskply.recipe.NamedSpace;
import org.jspecify.annotations.Nullable;

/**
 * What a PNG's chunks say about its colours, the strongest first (PNG, third edition, 4.3): cICP,
 * iCCP, sRGB, gAMA with cHRM.
 *
 * @param profile an ICC profile: the embedded one, or one made from gAMA and cHRM
 * @param named a colour space by name
 */
record PngColour(byte @Nullable [] profile, @Nullable NamedSpace named) {
  private static final PngColour UNSAID = new PngColour(null, null);

  static PngColour of(PngChunks chunks, List<String> notices) {
    PngColour found = codePoints(chunks, notices);
    found = found == null ? embedded(chunks, notices) : found;
    if (found == null && chunks.chunk("sRGB", 1) != null) {
      found = new PngColour(null, NamedSpace.SRGB);
    }
    found = found == null ? numbers(chunks, notices) : found;
    return found == null ? UNSAID : found;
  }

  /** Code points of ITU-T H.273: primaries, transfer, matrix, range. */
  private static @Nullable PngColour codePoints(PngChunks chunks, List<String> notices) {
    byte[] code = chunks.chunk("cICP", 4);
    if (code == null) {
      return null;
    }
    boolean camera = code[1] == 1 || code[1] == 6 || code[1] == 14 || code[1] == 15;
    if (code[2] == 0 && code[3] == 1) {
      if (code[0] == 1 && code[1] == 13) {
        return new PngColour(null, NamedSpace.SRGB);
      }
      if (code[0] == 12 && code[1] == 13) {
        return new PngColour(null, NamedSpace.DISPLAY_P3);
      }
      if (code[0] == 9 && camera) {
        return new PngColour(null, NamedSpace.REC2020);
      }
      if (code[0] == 1 && code[1] == 8) {
        return new PngColour(PlainProfile.rgb(PlainProfile.SRGB_CHROMATICITIES, 1), null);
      }
    }
    notices.add(
        String.format(
            Locale.ROOT,
            "The PNG's colour code (cICP %d, %d, %d, %d) is not known and was not used.",
            code[0] & 0xff,
            code[1] & 0xff,
            code[2] & 0xff,
            code[3] & 0xff));
    return null;
  }

  private static @Nullable PngColour embedded(PngChunks chunks, List<String> notices) {
    byte[] chunk = chunks.chunk("iCCP", 1);
    if (chunk == null) {
      return null;
    }
    int name = 0;
    while (name < chunk.length && chunk[name] != 0) {
      name++;
    }
    byte[] profile = name + 2 < chunk.length ? inflate(chunk, name + 2) : null;
    if (profile == null) {
      notices.add("The embedded colour profile is damaged and was not used.");
      return null;
    }
    return new PngColour(profile, null);
  }

  private static byte @Nullable [] inflate(byte[] packed, int from) {
    Inflater inflater = new Inflater();
    try {
      inflater.setInput(packed, from, packed.length - from);
      byte[] out = new byte[8192];
      int count = 0;
      while (!inflater.finished()) {
        int got = inflater.inflate(out, count, out.length - count);
        count += got;
        if (count == out.length) {
          if (count >= FrameLimits.MAX_PROFILE_BYTES) {
            return null;
          }
          out = Arrays.copyOf(out, 2 * count);
        } else if (got == 0 && !inflater.finished()) {
          return null;
        }
      }
      return Arrays.copyOf(out, count);
    } catch (DataFormatException e) {
      return null;
    } finally {
      inflater.end();
    }
  }

  private static @Nullable PngColour numbers(PngChunks chunks, List<String> notices) {
    byte[] gamma = chunks.chunk("gAMA", 4);
    if (gamma == null) {
      return null;
    }
    double encoding = (ByteBuffer.wrap(gamma).getInt(0) & 0xffffffffL) / 100_000.0;
    if (!(encoding >= 0.1 && encoding <= 10)) {
      notices.add("The PNG's gamma of " + encoding + " has no meaning and was not used.");
      return null;
    }
    if (!chunks.colour()) {
      return new PngColour(PlainProfile.grey(1 / encoding), null);
    }
    byte[] places = chunks.chunk("cHRM", 32);
    double[] xy = PlainProfile.SRGB_CHROMATICITIES.clone();
    for (int i = 0; places != null && i < 8; i++) {
      xy[i] = (ByteBuffer.wrap(places).getInt(4 * i) & 0xffffffffL) / 100_000.0;
    }
    try {
      return new PngColour(PlainProfile.rgb(xy, 1 / encoding), null);
    } catch (ArithmeticException e) {
      notices.add("The PNG's primaries are those of no colour space and were not used.");
      return new PngColour(PlainProfile.rgb(PlainProfile.SRGB_CHROMATICITIES, 1 / encoding), null);
    }
  }
}
