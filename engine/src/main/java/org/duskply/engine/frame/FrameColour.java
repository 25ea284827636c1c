package org.duskply.engine.frame;

import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.IccException;
import org.duskply.engine.colour.IccReader;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.ReadsAs;
import org.jspecify.annotations.Nullable;

/**
 * The colour space a frame is read in, and why. In this order: what the recipe says, the embedded
 * profile, the space that the file names, sRGB.
 *
 * @param space the colour space
 * @param reason a sentence for people who ask
 * @param notice a sentence for everyone, where something was assumed or left out
 */
public record FrameColour(ColourSpace space, String reason, @Nullable String notice) {
  /**
   * Decides.
   *
   * @param name the file's name, for the sentence of a refusal
   * @param override the recipe's word on this frame, if it has one
   * @throws FrameException if the embedded profile is sound but cannot be followed: reading the
   *     frame in any other space would be silently wrong
   */
  public static FrameColour of(String name, FrameInfo info, @Nullable NamedSpace override) {
    return of(name, info, override, null);
  }

  /**
   * Decides, the recipe having said what the file's numbers are.
   *
   * @param readsAs linear: the space's primaries count, its curve does not; encoded: its curve
   *     does, in files of floats without a profile too; null: what the file says
   */
  public static FrameColour of(
      String name, FrameInfo info, @Nullable NamedSpace override, @Nullable ReadsAs readsAs) {
    FrameColour found = space(name, info, override, readsAs);
    return readsAs == ReadsAs.LINEAR ? found.asLinear() : found;
  }

  private FrameColour asLinear() {
    ColourSpace linear = space.linear();
    if (linear == space) {
      return this;
    }
    return new FrameColour(
        linear,
        reason + " The recipe reads its numbers as linear light, whatever the curve.",
        notice);
  }

  private static FrameColour space(
      String name, FrameInfo info, @Nullable NamedSpace override, @Nullable ReadsAs readsAs) {
    if (override != null) {
      return new FrameColour(
          ColourSpace.of(override), "The recipe reads it as " + override.key() + ".", null);
    }
    byte[] profile = info.profile();
    if (profile == null) {
      return withoutProfile(info, null, readsAs);
    }
    try {
      ColourSpace space = IccReader.read(profile);
      if (space.grey() && info.channels() >= 3) {
        return withoutProfile(
            info, "The embedded colour profile is for grey pictures and was not used.", readsAs);
      }
      return new FrameColour(
          space, "Its own colour profile is followed (" + space.name() + ").", null);
    } catch (IccException e) {
      if (e.reason() == IccException.Reason.LOOK_UP_TABLES) {
        throw new FrameException(
            name
                + " has a colour profile of look-up tables, which this version cannot follow;"
                + " export it with a profile of primaries and curves, such as sRGB,"
                + " or give the frame's profile in the recipe.",
            e);
      }
      return withoutProfile(info, e.getMessage() + " It was not used.", readsAs);
    }
  }

  private static FrameColour withoutProfile(
      FrameInfo info, @Nullable String why, @Nullable ReadsAs readsAs) {
    String before = why == null ? "" : why + " ";
    NamedSpace named = info.named();
    if (named != null) {
      return new FrameColour(
          ColourSpace.of(named), "The file says it is " + named.key() + ".", why);
    }
    if (readsAs == ReadsAs.LINEAR) {
      return new FrameColour(
          ColourSpace.of(NamedSpace.SRGB).linear(),
          "The recipe reads it as linear light.",
          before + "The frame has no colour profile and is read in the primaries of sRGB.");
    }
    if (info.kind() == Samples.Kind.FLOATS && readsAs == null) {
      return new FrameColour(
          ColourSpace.of(NamedSpace.SRGB).linear(),
          "Floats without a profile are read as linear.",
          before
              + "The frame holds floats without a colour profile and is read as linear light"
              + " in the primaries of sRGB.");
    }
    String sentence = "The frame has no colour profile and is read as sRGB.";
    return new FrameColour(
        ColourSpace.of(NamedSpace.SRGB),
        "Without a profile it is read as sRGB.",
        why == null ? sentence : before + "The frame is read as sRGB.");
  }
}
