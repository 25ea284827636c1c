package org.duskply.engine.frame;

import java.nio.ByteBuffer;
import java.util.LinkedHashMap;
import java.util.Map;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.IccException;
import org.duskply.engine.colour.IccReader;
import org.jspecify.annotations.Nullable;

/**
 * The colour spaces of the profiles that were read last, so that the frames of one recipe, which
 * come from one camera, have theirs examined once, and a recipe that is opened again after an edit
 * none. At most {@value #KEPT} are kept, of profiles of at most {@value #MOST_BYTES} bytes. A space
 * depends on the profile's bytes alone; whether it was kept changes nothing but time.
 */
final class ProfileSpaces {
  private static final int KEPT = 8;
  private static final int MOST_BYTES = 1 << 16;

  private static final Map<ByteBuffer, ColourSpace> SPACES =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<ByteBuffer, ColourSpace> eldest) {
          return size() > KEPT;
        }
      };

  private ProfileSpaces() {}

  /**
   * The colour space that a profile describes.
   *
   * @throws IccException as {@link IccReader#read}
   */
  static ColourSpace of(byte[] profile) {
    if (profile.length > MOST_BYTES) {
      return IccReader.read(profile);
    }
    ByteBuffer key = ByteBuffer.wrap(profile);
    ColourSpace known = known(key);
    if (known != null) {
      return known;
    }
    ColourSpace read = IccReader.read(profile);
    keep(ByteBuffer.wrap(profile.clone()), read);
    return read;
  }

  private static synchronized @Nullable ColourSpace known(ByteBuffer key) {
    return SPACES.get(key);
  }

  private static synchronized void keep(ByteBuffer key, ColourSpace space) {
    SPACES.put(key, space);
  }
}
