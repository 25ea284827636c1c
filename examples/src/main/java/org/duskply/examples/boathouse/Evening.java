package org.duskply.examples.boathouse;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.duskply.examples.trace.Noise;

/** The frames of one evening, from the first test to the last light, all from one tripod. */
public final class Evening {
  /** The camera's clock at the first shot; the date is of no meaning. */
  private static final LocalDateTime FIRST = LocalDateTime.of(2025, 9, 12, 19, 41, 8);

  private static final String[] POPS = {
    "pop-hull", "pop-pontoon", "pop-landing", "pop-reeds", "pop-chairs", "pop-steps", "pop-wall",
    "pop-gable", "pop-eaves", "pop-side", "pop-roof", "pop-willow", "pop-trunk", "pop-piles"
  };

  private Evening() {}

  /** All shots in the order in which they were taken. */
  public static List<Shot> shots() {
    List<Shot> shots = new ArrayList<>();
    shots.add(ambient("test-shot", 1, 0, 0.8));
    shots.add(ambient("early", 2, 7, 1));
    shots.add(ambient("dusk", 3, 14, 1.3));
    for (int i = 0; i < POPS.length; i++) {
      int minute = 16 + 2 * i;
      shots.add(new Shot(POPS[i], 4 + i, minute, 0.5, 200, 8, i));
    }
    shots.add(ambient("after-pops", 18, 45, 3.2));
    shots.add(ambient("late-sky", 19, 48, 5));
    shots.add(ambient("fire", 20, 52, 0.15));
    shots.add(ambient("night", 21, 61, 0.4));
    return shots;
  }

  private static Shot ambient(String name, int number, int minute, double seconds) {
    return new Shot(name, number, minute, seconds, 200, 8, Shot.NO_FLASH);
  }

  /** What the camera's clock said. */
  public static LocalDateTime time(Shot shot) {
    return FIRST.plusMinutes(shot.minute()).plusSeconds(Noise.hash(shot.number(), 1, 2) & 31);
  }
}
