package org.duskply.engine.render;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.pixel.Runs;
import org.duskply.engine.plan.Bands;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Key;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Keys;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.Stage;
import org.jspecify.annotations.Nullable;

/**
 * What one job finds in the store and offers to it, by the places of its plan and its outputs: the
 * keys of all that would be made were nothing kept, worked out once before the job starts.
 * Immutable from then on but for the store.
 */
final class JobStore {
  private final Plan plan;
  private final Store.Use use;
  private final Keys keys;
  private final List<Map<Integer, Key>> encodedKeys = new ArrayList<>();
  private final List<Map<Integer, Region>> unitsAsked = new ArrayList<>();
  private final List<Map<Integer, Key>> unitKeys = new ArrayList<>();

  /** For a job that makes some outputs. */
  JobStore(Plan plan, List<Output> outputs, Bands bands, Store store) {
    this(plan, pictures(outputs), outputs, bands, store);
  }

  /** For parts of one picture that are asked for now and then; nothing of it is encoded. */
  JobStore(Plan plan, Node picture, Region canvas, Bands bands, Store store) {
    this(plan, new IdentityHashMap<>(Map.of(picture, canvas)), List.of(), bands, store);
  }

  private JobStore(
      Plan plan,
      IdentityHashMap<Node, Region> pictures,
      List<Output> outputs,
      Bands bands,
      Store store) {
    this.plan = plan;
    this.use = store.begin();
    // A store that keeps nothing is asked for nothing.
    this.keys = new Keys(store == Store.NONE ? new IdentityHashMap<>() : pictures, bands);
    outputs.forEach(o -> encodedKeys.add(encodedKeys(o)));
    for (FrameNode frame : plan.frames()) {
      unitsAsked.add(unitsAsked(frame));
      unitKeys.add(unitKeys(frame, unitsAsked.get(unitsAsked.size() - 1).keySet()));
    }
    claimAll();
  }

  private static IdentityHashMap<Node, Region> pictures(List<Output> outputs) {
    IdentityHashMap<Node, Region> pictures = new IdentityHashMap<>();
    outputs.forEach(o -> pictures.merge(o.root(), o.canvas(), Region::hull));
    return pictures;
  }

  private Map<Integer, Key> encodedKeys(Output output) {
    KeyWriter writer = new KeyWriter();
    output.sink().describe(writer);
    Key sink = writer.done();
    Map<Integer, Key> ofBand = new HashMap<>();
    keys.asked(output.root())
        .forEach(
            (band, asked) -> {
              Key picture = keys.of(output.root(), band, asked);
              if (picture != null) {
                ofBand.put(band, writer.word("encoded").key(picture).key(sink).number(band).done());
              }
            });
    return ofBand;
  }

  private Map<Integer, Region> unitsAsked(FrameNode frame) {
    Map<Integer, Region> ofUnit = new HashMap<>();
    keys.asked(frame)
        .values()
        .forEach(
            asked ->
                Units.cut(
                    frame.source(),
                    frame.stored(asked),
                    (unit, part) -> ofUnit.merge(unit, part, Region::hull)));
    return ofUnit;
  }

  private static Map<Integer, Key> unitKeys(FrameNode frame, Set<Integer> units) {
    KeyWriter writer = new KeyWriter();
    Key contents = writer.word("samples").word(frame.contents()).done();
    Map<Integer, Key> ofUnit = new HashMap<>();
    units.forEach(unit -> ofUnit.put(unit, writer.key(contents).number(unit).done()));
    return ofUnit;
  }

  private void claimAll() {
    encodedKeys.forEach(ofBand -> ofBand.values().forEach(use::claim));
    unitKeys.forEach(ofUnit -> ofUnit.values().forEach(use::claim));
    for (Stage stage : plan.stages()) {
      Node node = stage.node();
      keys.asked(node).forEach((band, asked) -> claim(keys.of(node, band, asked)));
    }
  }

  private void claim(@Nullable Key key) {
    if (key != null) {
      use.claim(key);
    }
  }

  /** An encoded band of an output, if it is kept. */
  @Nullable EncodedBand encoded(int output, int band) {
    return find(encodedKeys.get(output).get(band), Region.EMPTY) instanceof EncodedBand found
        ? found
        : null;
  }

  /** A band of a stage, if it is kept with all of {@code part}. */
  @Nullable KeptBand band(int stage, int band, Region part) {
    Key key = keys.of(plan.stages().get(stage).node(), band, part);
    return find(key, part) instanceof KeptBand found ? found : null;
  }

  /** Samples of a unit of a frame, if they are kept with all of {@code part}. */
  @Nullable Samples samples(int frame, int unit, Region part) {
    return find(unitKeys.get(frame).get(unit), part) instanceof KeptUnit found
        ? found.samples()
        : null;
  }

  private @Nullable Kept find(@Nullable Key key, Region part) {
    return key == null ? null : use.find(key, part);
  }

  /** Offers an encoded band. */
  void offer(int output, int band, EncodedBand encoded) {
    offer(encodedKeys.get(output).get(band), encoded);
  }

  /** Offers a band of a stage, with the runs of a mask. */
  void offer(int stage, int band, Planes planes, @Nullable Runs runs) {
    Node node = plan.stages().get(stage).node();
    offer(keys.of(node, band, planes.area()), new KeptBand(planes, runs, worth(node)));
  }

  /**
   * Offers samples of a unit of a frame. Those of a preview are not kept: what it makes of them is,
   * and takes a small part of the room.
   */
  void offer(int frame, int unit, Samples samples) {
    if (plan.frames().get(frame).reduction() == 1) {
      offer(unitKeys.get(frame).get(unit), new KeptUnit(samples));
    }
  }

  private void offer(@Nullable Key key, Kept kept) {
    if (key != null) {
      use.offer(key, kept);
    }
  }

  private static Kept.Worth worth(Node node) {
    if (node instanceof FrameNode frame && frame.reduction() > 1) {
      return Kept.Worth.REDUCED;
    }
    return node.planes() == 1 ? Kept.Worth.MASK : Kept.Worth.PICTURE;
  }

  /** Whether anything can be found. */
  boolean keeps() {
    return use != Store.Use.NONE;
  }

  /**
   * What is asked of a band of a stage for all of the pictures; nothing of one that is not kept.
   */
  Region asked(int stage, int band) {
    Node node = plan.stages().get(stage).node();
    return keys.asked(node).getOrDefault(band, Region.EMPTY);
  }

  /** What is asked of a unit of a frame for all of the pictures. */
  Region unitAsked(int frame, int unit) {
    return unitsAsked.get(frame).getOrDefault(unit, Region.EMPTY);
  }

  /** Lets go of all that was found so far. */
  void release() {
    use.release();
  }
}
