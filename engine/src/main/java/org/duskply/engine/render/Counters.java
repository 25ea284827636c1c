package org.duskply.engine.render;

import java.util.concurrent.atomic.AtomicIntegerArray;
import org.duskply.engine.plan.Plan;

/** How much work a job did: the proof that cost follows what the masks show. Thread-safe. */
public final class Counters {
  private final AtomicIntegerArray unitsDecoded;
  private final AtomicIntegerArray bandsRun;
  private final AtomicIntegerArray bandsEncoded;

  Counters(Plan plan, int outputs) {
    this.unitsDecoded = new AtomicIntegerArray(plan.frames().size());
    this.bandsRun = new AtomicIntegerArray(plan.stages().size());
    this.bandsEncoded = new AtomicIntegerArray(outputs);
  }

  void decoded(int frame) {
    unitsDecoded.incrementAndGet(frame);
  }

  void ran(int stage) {
    bandsRun.incrementAndGet(stage);
  }

  void encoded(int output) {
    bandsEncoded.incrementAndGet(output);
  }

  /** Units decoded of a frame of the plan. */
  public int unitsDecoded(int frame) {
    return unitsDecoded.get(frame);
  }

  /** Units decoded of all frames. */
  public long unitsDecoded() {
    long sum = 0;
    for (int f = 0; f < unitsDecoded.length(); f++) {
      sum += unitsDecoded.get(f);
    }
    return sum;
  }

  /** Bands run of a stage of the plan. */
  public int bandsRun(int stage) {
    return bandsRun.get(stage);
  }

  /** Bands encoded of an output of the job. */
  public int bandsEncoded(int output) {
    return bandsEncoded.get(output);
  }
}
