package org.duskply.engine.measure;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.frame.FrameReader;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.Lineariser;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.plan.Stop;

/**
 * The light of one frame on a lattice of its pixels: every 8th row of every 8th column, counted
 * from the picture's origin, so that two frames of one size have the same points. Where a picture
 * is high, the rows lie in a limited number of blocks of 64 rows spread evenly from top to bottom;
 * only what holds these rows is decoded, as far as the file allows.
 *
 * <p>A point is <em>sound</em> where the file says how bright it was: fully covered and, in files
 * of whole numbers, no channel at {@value #CLIPPED} of full scale or above, where a sensor or a
 * developer has cut it off.
 */
public final class Lattice {
  /** Pixels between neighbouring points, across and down. */
  public static final int PITCH = 8;

  /** Share of full scale from which on a stored sample says no more than "at least so bright". */
  public static final double CLIPPED = 0.995;

  private static final int BLOCK = 64;

  private final float[][] planes;
  private final boolean[] sound;

  private Lattice(int points) {
    planes = new float[3][points];
    sound = new boolean[points];
  }

  /**
   * Reads a frame's lattice.
   *
   * @param lineariser from its samples to working light
   * @param mostBlocks most blocks of 64 rows that points are taken from, at least 1
   * @throws org.duskply.engine.frame.FrameException if the frame is damaged where it is read
   * @throws java.util.concurrent.CancellationException if {@code stop} wants it
   */
  public static Lattice read(FrameSource source, Lineariser lineariser, int mostBlocks, Stop stop) {
    List<Integer> rows = rows(source.info().height(), mostBlocks);
    int across = (source.info().width() - 1) / PITCH + 1;
    Lattice lattice = new Lattice(rows.size() * across);
    try (FrameReader reader = source.reader()) {
      Filling filling = new Filling(source, lineariser, lattice);
      Samples unit = null;
      int index = 0;
      int at = 0;
      for (int y : rows) {
        stop.check();
        while (source.unit(index).bottom() <= y) {
          index++;
          unit = null;
        }
        if (unit == null) {
          unit = reader.read(index);
        }
        filling.row(unit, y, at);
        at += across;
      }
    }
    return lattice;
  }

  /** The rows of the lattice in a picture of {@code height} rows. */
  static List<Integer> rows(int height, int mostBlocks) {
    int blocks = (height - 1) / BLOCK + 1;
    int step = (blocks - 1) / mostBlocks + 1;
    List<Integer> rows = new ArrayList<>();
    for (int y = 0; y < height; y += PITCH) {
      if (y / BLOCK % step == 0) {
        rows.add(y);
      }
    }
    return rows;
  }

  /** How many points. */
  public int points() {
    return sound.length;
  }

  /** The live array of a plane: 0 red, 1 green, 2 blue, linear working light. */
  public float[] plane(int plane) {
    return planes[plane];
  }

  /** Whether the file says how bright point {@code i} was. */
  public boolean sound(int i) {
    return sound[i];
  }

  /** Picks the points of one row after the other. */
  private static final class Filling {
    private final Lineariser lineariser;
    private final Lattice lattice;
    private final int width;
    private final int colours;
    private final double most;
    private final float[][] line;

    Filling(FrameSource source, Lineariser lineariser, Lattice lattice) {
      this.lineariser = lineariser;
      this.lattice = lattice;
      this.width = source.info().width();
      this.colours = source.info().channels() < 3 ? 1 : 3;
      this.most = CLIPPED * source.info().fullScale();
      this.line = new float[4][width];
    }

    void row(Samples unit, int y, int at) {
      lineariser.row(unit, y, 0, width, line[0], line[1], line[2], line[3], 0);
      boolean covers = lineariser.planes() > 3;
      for (int x = 0, i = at; x < width; x += PITCH, i++) {
        for (int p = 0; p < 3; p++) {
          lattice.planes[p][i] = line[p][x];
        }
        lattice.sound[i] = (!covers || line[3][x] == 1) && !clipped(unit, unit.at(x, y));
      }
    }

    private boolean clipped(Samples unit, int first) {
      for (int i = first; i < first + colours; i++) {
        boolean cut =
            switch (unit.kind()) {
              case BYTES -> (unit.bytes()[i] & 0xff) >= most;
              case SHORTS -> (unit.shorts()[i] & 0xffff) >= most;
              case FLOATS -> false;
            };
        if (cut) {
          return true;
        }
      }
      return false;
    }
  }
}
