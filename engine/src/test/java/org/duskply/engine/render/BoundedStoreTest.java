package org.duskply.engine.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Key;
import org.duskply.engine.plan.KeyWriter;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What a store of so many bytes keeps, and what it lets go first. */
class BoundedStoreTest {
  private static final Region AREA = Region.ofSize(10, 10);

  /** Bytes of a picture of one plane with its entry. */
  private static final long PICTURE = 400 + BoundedStore.ENTRY_BYTES;

  private static Key key(int number) {
    return new KeyWriter().number(number).done();
  }

  private static Kept picture() {
    return picture(AREA);
  }

  private static Kept picture(Region area) {
    return new KeptBand(new Planes(area, 1), null, Kept.Worth.PICTURE);
  }

  private static Kept of(Kept.Worth worth) {
    return switch (worth) {
      case MASK, PICTURE, REDUCED -> new KeptBand(new Planes(AREA, 1), null, worth);
      case SAMPLES -> new KeptUnit(Samples.of(AREA, 1, new float[100]));
      case ENCODED -> (EncodedBand) () -> 400;
    };
  }

  private static @Nullable Kept find(Store.Use use, int number) {
    return use.find(key(number), AREA);
  }

  /** Whether something is there; nothing is held for having looked. */
  private static boolean has(BoundedStore store, int number) {
    Store.Use use = store.begin();
    boolean found = find(use, number) != null;
    use.release();
    return found;
  }

  /** One job that needs {@code count} pictures, from the first to the last; how many it found. */
  private static int scan(BoundedStore store, int from, int count) {
    Store.Use use = store.begin();
    for (int i = from; i < from + count; i++) {
      use.claim(key(i));
    }
    int found = 0;
    for (int i = from; i < from + count; i++) {
      if (find(use, i) != null) {
        found++;
      } else {
        use.offer(key(i), picture());
      }
    }
    use.release();
    return found;
  }

  @Test
  void whatWasOfferedIsFound() {
    BoundedStore store = new BoundedStore(PICTURE);
    Kept picture = picture();
    store.begin().offer(key(1), picture);
    assertThat(find(store.begin(), 1)).isSameAs(picture);
    assertThat(find(store.begin(), 2)).isNull();
    assertThat(store.bytes()).isEqualTo(PICTURE);
  }

  @Test
  void whatIsLargerThanTheStoreIsDeclined() {
    BoundedStore store = new BoundedStore(PICTURE - 1);
    store.begin().offer(key(1), picture());
    assertThat(store.bytes()).isZero();
    new BoundedStore(0).begin().offer(key(1), of(Kept.Worth.ENCODED));
    assertThat(has(store, 1)).isFalse();
  }

  @Test
  void nothingSmallerIsForgottenForWhatIsDeclined() {
    BoundedStore store = new BoundedStore(2 * PICTURE);
    scan(store, 0, 2);
    for (int i = 0; i < 5; i++) { // both are stale by now
      store.begin();
    }
    store.begin().offer(key(9), picture(Region.ofSize(100, 100)));
    assertThat(has(store, 0) && has(store, 1)).isTrue();
  }

  /** The longest unused first would have forgotten each of them just before it is met again. */
  @Test
  void ofAPictureThatIsTooLargeThePartThatFitsIsFoundEachTime() {
    BoundedStore store = new BoundedStore(30 * PICTURE + 17);
    assertThat(scan(store, 0, 100)).isZero();
    for (int again = 0; again < 4; again++) {
      assertThat(scan(store, 0, 100)).isEqualTo(30);
      assertThat(store.bytes()).isEqualTo(30 * PICTURE);
    }
  }

  @Test
  void twoPicturesByTurnsKeepTheirsAndAThirdTakesThePlaceOfWhatNobodyAskedForSince() {
    BoundedStore store = new BoundedStore(20 * PICTURE);
    scan(store, 0, 10);
    scan(store, 100, 10);
    for (int turn = 0; turn < 3; turn++) {
      assertThat(scan(store, 0, 10)).isEqualTo(10);
      assertThat(scan(store, 100, 10)).isEqualTo(10);
    }
    assertThat(scan(store, 200, 10)).isZero();
    assertThat(scan(store, 100, 10)).isEqualTo(10);
    assertThat(scan(store, 200, 10)).isEqualTo(10);
    assertThat(scan(store, 0, 10)).isZero();
  }

  @Test
  void whatIsClaimedStaysThoughNobodyLooksItUp() {
    BoundedStore store = new BoundedStore(2 * PICTURE);
    scan(store, 0, 2);
    for (int i = 0; i < 4; i++) {
      store.begin().claim(key(1));
    }
    Store.Use use = store.begin();
    use.offer(key(7), picture());
    use.offer(key(8), picture());
    assertThat(find(use, 0)).isNull();
    assertThat(find(use, 1)).isNotNull();
    assertThat(find(use, 7)).isNotNull();
    assertThat(find(use, 8)).isNull();
  }

  @Test
  void whatIsWorthMoreTakesThePlaceOfWhatIsWorthLeast() {
    Kept.Worth[] all = Kept.Worth.values();
    BoundedStore store = new BoundedStore(all.length * PICTURE);
    Store.Use use = store.begin();
    for (Kept.Worth worth : all) {
      use.offer(key(worth.ordinal()), of(worth));
    }
    assertThat(store.bytes()).isEqualTo(all.length * PICTURE);
    // Encoded bands push out all but what is worth as much, from the least up.
    for (int i = 0; i < all.length; i++) {
      use.offer(key(100 + i), of(Kept.Worth.ENCODED));
      for (Kept.Worth worth : all) {
        boolean stays = worth.ordinal() > i || worth == Kept.Worth.ENCODED;
        Kept found = find(use, worth.ordinal());
        use.release();
        assertThat(found != null).as(worth + " after " + i).isEqualTo(stays);
      }
    }
    assertThat(find(use, 100 + all.length - 1)).isNull();
  }

  @Test
  void whatIsWorthLessTakesNobodysPlaceWhileThatIsLive() {
    BoundedStore store = new BoundedStore(PICTURE);
    Store.Use use = store.begin();
    use.offer(key(1), of(Kept.Worth.REDUCED));
    use.offer(key(2), of(Kept.Worth.SAMPLES));
    assertThat(find(use, 2)).isNull();
    store.begin();
    Store.Use later = store.begin();
    later.offer(key(2), of(Kept.Worth.SAMPLES));
    assertThat(find(later, 2)).isNotNull();
  }

  @Test
  void whatAJobHoldsIsNotForgottenAndStaysCounted() {
    BoundedStore store = new BoundedStore(PICTURE);
    scan(store, 0, 1);
    Store.Use holding = store.begin();
    assertThat(find(holding, 0)).isNotNull();
    for (int i = 0; i < 5; i++) {
      store.begin().offer(key(1), of(Kept.Worth.ENCODED));
      assertThat(find(holding, 0)).isNotNull();
      assertThat(store.bytes()).isEqualTo(PICTURE);
    }
    holding.release();
    store.begin().offer(key(1), of(Kept.Worth.ENCODED)); // live until just now, yet worth less
    assertThat(has(store, 0)).isFalse();
    assertThat(has(store, 1)).isTrue();
  }

  @Test
  void whatHasMoreTakesThePlaceOfWhatHasLess() {
    Region wide = Region.ofSize(20, 10);
    BoundedStore store = new BoundedStore(1400);
    Store.Use use = store.begin();
    use.offer(key(1), picture());
    assertThat(use.find(key(1), wide)).isNull();
    use.offer(key(1), picture(wide));
    assertThat(use.find(key(1), wide)).isNotNull();
    assertThat(use.find(key(1), AREA)).as("a part of it").isNotNull();
    use.offer(key(1), picture());
    assertThat(use.find(key(1), wide)).as("less is not taken for more").isNotNull();
    assertThat(store.bytes()).isEqualTo(800 + BoundedStore.ENTRY_BYTES);
    use.release();
    use.offer(key(1), picture(Region.ofSize(20, 100)));
    assertThat(use.find(key(1), wide)).as("what does not fit takes nothing's place").isNotNull();
  }

  /** Jobs of several threads at once; the bytes are counted anew from what is found. */
  @Test
  void theLimitIsNeverPassedWhateverJobsDo() throws Exception {
    long limit = 40 * PICTURE + 123;
    BoundedStore store = new BoundedStore(limit);
    ExecutorService pool = Executors.newFixedThreadPool(4);
    List<Future<?>> jobs = new ArrayList<>();
    for (int j = 0; j < 40; j++) {
      Random random = new Random(j);
      jobs.add(
          pool.submit(
              () -> {
                Store.Use use = store.begin();
                for (int i = 0; i < 300; i++) {
                  int number = random.nextInt(120);
                  Kept.Worth worth = Kept.Worth.values()[number % Kept.Worth.values().length];
                  switch (random.nextInt(4)) {
                    case 0 -> use.claim(key(number));
                    case 1 -> find(use, number);
                    default -> use.offer(key(number), of(worth));
                  }
                  assertThat(store.bytes()).isBetween(0L, limit);
                }
                use.release();
              }));
    }
    for (Future<?> job : jobs) {
      job.get();
    }
    pool.shutdown();
    long counted = 0;
    Map<Kept.Worth, Integer> kinds = new EnumMap<>(Kept.Worth.class);
    Store.Use use = store.begin();
    for (int number = 0; number < 120; number++) {
      Kept kept = find(use, number);
      if (kept != null) {
        counted += kept.heldBytes() + BoundedStore.ENTRY_BYTES;
        kinds.merge(kept.worth(), 1, Integer::sum);
      }
    }
    assertThat(store.bytes()).isEqualTo(counted);
    assertThat(counted).isGreaterThan(limit - PICTURE);
    assertThat(kinds.get(Kept.Worth.ENCODED)).as("%s", kinds).isEqualTo(120 / 5);
  }
}
