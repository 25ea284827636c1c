package org.duskply.engine.filter;

import java.util.Arrays;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/**
 * Moves the outline of a mask outward by n px, inward below 0: {@code clamp(½ + n − d)}, with d the
 * signed Euclidean distance of a pixel's centre from the level of ½, negative inside.
 *
 * <p><b>The level.</b> A pixel is inside where its value is at least ½. Between two neighbours, a
 * inside and b outside, the level lies {@code a + b − ½} from the centre of a where a − b is at
 * least ½: there the values are shares of an area, and this is where a straight edge passes. Else
 * it lies {@code (a − ½)/(a − b)}, as on a soft slope; where a − b is ½ both agree. Places are
 * rounded to 1/{@value #UNIT} px, and joined by straight lines inside each square of four centres;
 * where four of them meet in one square, its mean says what is joined (marching squares). Of exact
 * area coverage a straight edge of any slant keeps its place within 0.01 px, an arc of 20 px within
 * 0.02; a corner is cut by as much as a pixel's window cuts it, and what is thinner than half a
 * pixel has no level and is not seen.
 *
 * <p><b>The distance.</b> For rows, the places on each row are sites: the nearest one in a pixel's
 * own row is found by a scan, the nearest of all rows by the lower envelope of parabolas (Meijster,
 * Roerdink, Hesselink 2000; Felzenszwalb, Huttenlocher 2012), in whole numbers and hence exact.
 * Then the distance is taken to the lines that pass through that site. The same for columns; the
 * lesser counts. Against the distance to all lines this is off only where two outlines are equally
 * far, by at most 1/(8d) px.
 *
 * <p>Beyond n + ½ nothing depends on the distance any more, so that a window of ⌈|n|⌉ + 4 px is all
 * that is read. Values are functions of that window's values and of offsets in it: every rectangle
 * gives the same bits. The time is a few scans of the window whatever n. Immutable; any number of
 * threads may apply it.
 */
public final class Widening {
  /** The farthest that an outline can be moved, in pixels of the canvas. */
  public static final double MOST = 4_000;

  private static final int UNIT = 1024;
  private static final long SQUARE = (long) UNIT * UNIT;
  private static final int NONE = Integer.MAX_VALUE;
  private static final float FAR = Float.MAX_VALUE;

  // A site this much farther than n leaves no doubt: its lines are less than a pixel nearer.
  private static final double DOUBT = 1.5;

  private final double by;
  private final int sites;

  private Widening(double by) {
    this.by = by;
    this.sites = (int) Math.ceil(Math.abs(by)) + 2;
  }

  /**
   * A move of the outline.
   *
   * @param by pixels outward, inward below 0; at most {@link #MOST}
   */
  public static Widening of(double by) {
    if (!(Math.abs(by) <= MOST)) {
      throw new IllegalArgumentException("by " + by);
    }
    return new Widening(by);
  }

  /** The most pixels on any side that an output needs around it. */
  public int reach() {
    return sites + 2;
  }

  /** The input that {@code out} is made from. */
  public Region needs(Region out) {
    return out.grow(reach());
  }

  /** How far beyond the mask it can show. */
  public int growth() {
    return by > 0 ? (int) Math.ceil(by) + 1 : 0;
  }

  /** Bytes that {@link #apply} takes beside its input and its result. */
  public long scratchBytes(Region out) {
    if (out.empty()) {
      return 0;
    }
    long across = (long) (out.height() + 2 * sites) * out.width();
    long down = (long) (out.width() + 2 * sites) * out.height();
    long line = Math.max(out.width(), out.height()) + 2L * sites;
    return Integer.BYTES * (Math.max(across, down) + 3 * line);
  }

  /**
   * Fills plane 0 of {@code out}, all of it.
   *
   * @param in must hold what {@link #needs} says, continued beyond borders by the caller
   */
  public void apply(Planes in, Planes out) {
    Region area = out.area();
    float[] distance = out.plane(0);
    float[] values = in.plane(0);
    int width = in.area().width();
    int origin = in.at(area.left(), area.top());
    Arrays.fill(distance, FAR);
    new Pass(values, origin, width, 1, area.height(), area.width())
        .lessen(distance, area.width(), 1);
    new Pass(values, origin, 1, width, area.width(), area.height())
        .lessen(distance, 1, area.width());
    for (int y = area.top(); y < area.bottom(); y++) {
      int at = out.at(area.left(), y);
      int from = in.at(area.left(), y);
      for (int i = 0; i < area.width(); i++) {
        distance[at + i] = shown(values[from + i], distance[at + i]);
      }
    }
  }

  private float shown(float value, float distance) {
    double signed = value >= 0.5f ? -distance : distance;
    return (float) Math.max(0, Math.min(1, 0.5 + by - signed));
  }

  /**
   * One of the two ways of looking: along lines, which are rows or columns, and then across them.
   * Lines and positions count from the first of the output; strides say where they lie.
   */
  private final class Pass {
    private final float[] values;
    private final int origin;
    private final int lineStride;
    private final int stride;
    private final int lines;
    private final int length;

    /** For each line, the sites' lines included, and each position: how far along the site is. */
    private final int[] along;

    private final int[] line;
    private final int[] start;

    Pass(float[] values, int origin, int lineStride, int stride, int lines, int length) {
      this.values = values;
      this.origin = origin;
      this.lineStride = lineStride;
      this.stride = stride;
      this.lines = lines;
      this.length = length;
      this.along = new int[Math.multiplyExact(lines + 2 * sites, length)];
      this.line = new int[lines + 2 * sites];
      this.start = new int[lines + 2 * sites];
    }

    /** Lessens distances where a site of this way is nearer. */
    void lessen(float[] distance, int outLineStride, int outStride) {
      boolean any = false;
      for (int l = -sites; l < lines + sites; l++) {
        any |= scan(l);
      }
      for (int p = 0; any && p < length; p++) {
        int last = envelope(p);
        for (int l = lines - 1; last >= 0 && l >= 0; l--) {
          int at = l * outLineStride + p * outStride;
          distance[at] = Math.min(distance[at], (float) distance(l, p, line[last]));
          if (l == start[last]) {
            last--;
          }
        }
      }
    }

    /** Finds the nearest site of one line for each of its positions; whether there is one. */
    private boolean scan(int l) {
      int row = origin + l * lineStride;
      int out = (l + sites) * length;
      int reach = sites * UNIT;
      boolean any = false;
      int site = Integer.MIN_VALUE / 2;
      for (int p = -sites - 1; p < length; p++) {
        if (p >= 0) {
          int back = site - p * UNIT;
          along[out + p] = -back <= reach ? back : NONE;
          any |= -back <= reach;
        }
        int at = row + p * stride;
        if (crosses(values[at], values[at + stride])) {
          site = p * UNIT + crossing(values[at], values[at + stride]);
        }
      }
      site = Integer.MAX_VALUE / 2;
      for (int p = length + sites; p >= 0; p--) {
        if (p < length) {
          int ahead = site - p * UNIT;
          int known = along[out + p];
          if (ahead <= reach && (known == NONE || ahead < -known)) {
            along[out + p] = ahead;
            any = true;
          }
        }
        int at = row + p * stride;
        if (crosses(values[at - stride], values[at])) {
          site = (p - 1) * UNIT + crossing(values[at - stride], values[at]);
        }
      }
      return any;
    }

    /**
     * The lines whose sites are nearest to position p, each from the line where it begins to be;
     * the index of the last, −1 without any. Of equally near ones the first counts.
     */
    private int envelope(int p) {
      int last = -1;
      for (int l = -sites; l < lines + sites; l++) {
        if (along(l, p) == NONE) {
          continue;
        }
        while (last >= 0 && square(start[last], line[last], p) > square(start[last], l, p)) {
          last--;
        }
        int from = last < 0 ? 0 : turn(line[last], l, p) + 1;
        if (from < lines) {
          last++;
          line[last] = l;
          start[last] = from;
        }
      }
      return last;
    }

    /** The last line to which the site of line a is as near as that of a later line b. */
    private int turn(int a, int b, int p) {
      long ofA = along(a, p);
      long ofB = along(b, p);
      long difference = SQUARE * ((long) b * b - (long) a * a) + ofB * ofB - ofA * ofA;
      long turn = Math.floorDiv(difference, 2 * SQUARE * (b - a));
      return (int) Math.min(turn, lines);
    }

    private long square(int from, int l, int p) {
      long across = (long) (l - from) * UNIT;
      long along = along(l, p);
      return across * across + along * along;
    }

    private int along(int l, int p) {
      return along[(l + sites) * length + p];
    }

    /** The distance of a pixel from the lines through a site. */
    private double distance(int l, int p, int siteLine) {
      double site = Math.sqrt(square(l, siteLine, p)) / UNIT;
      double reach = Math.abs(by);
      if (site >= reach + DOUBT) {
        return FAR;
      }
      if (site <= reach - 0.5) {
        return site;
      }
      int before = p + Math.floorDiv(along(siteLine, p), UNIT);
      double first = squareFrom(l, p, siteLine - 1, before);
      double second = squareFrom(l, p, siteLine, before);
      return Math.min(site, Math.sqrt(Math.min(first, second)) / UNIT);
    }

    /**
     * The square of a pixel's distance from the lines in a square of four centres, in units.
     *
     * @param line0 line of its first corner
     * @param p0 position of its first corner
     */
    private double squareFrom(int l, int p, int line0, int p0) {
      int at = origin + line0 * lineStride + p0 * stride;
      float a = values[at];
      float b = values[at + stride];
      float c = values[at + stride + lineStride];
      float d = values[at + lineStride];
      // From the pixel to the first corner, and the crossings of its four sides from there.
      double x = (double) (p0 - p) * UNIT;
      double y = (double) (line0 - l) * UNIT;
      boolean ab = crosses(a, b);
      boolean bc = crosses(b, c);
      boolean dc = crosses(d, c);
      boolean ad = crosses(a, d);
      double topX = ab ? x + crossing(a, b) : 0;
      double rightY = bc ? y + crossing(b, c) : 0;
      double bottomX = dc ? x + crossing(d, c) : 0;
      double leftY = ad ? y + crossing(a, d) : 0;
      double x1 = x + UNIT;
      double y1 = y + UNIT;
      if (ab && bc && dc && ad) {
        boolean joinsA = (a >= 0.5f) == (((double) a + b) + ((double) c + d) >= 2);
        return joinsA
            ? Math.min(segment(topX, y, x1, rightY), segment(bottomX, y1, x, leftY))
            : Math.min(segment(topX, y, x, leftY), segment(bottomX, y1, x1, rightY));
      }
      double fromX = ab ? topX : ad ? x : x1;
      double fromY = ab ? y : ad ? leftY : rightY;
      double toX = dc ? bottomX : bc ? x1 : x;
      double toY = dc ? y1 : bc ? rightY : leftY;
      return segment(fromX, fromY, toX, toY);
    }
  }

  private static boolean crosses(float a, float b) {
    return a >= 0.5f != b >= 0.5f;
  }

  /** How far from the first centre the level lies, in units, strictly between the two. */
  private static int crossing(float a, float b) {
    double inside = Math.max(a, b);
    double outside = Math.min(a, b);
    double drop = inside - outside;
    double share = drop >= 0.5 ? inside + outside - 0.5 : (inside - 0.5) / drop;
    int units = (int) Math.max(1, Math.min(UNIT - 1, Math.rint(share * UNIT)));
    return a >= b ? units : UNIT - units;
  }

  /** The square of the distance of the origin from a straight line between two points. */
  private static double segment(double x0, double y0, double x1, double y1) {
    double dx = x1 - x0;
    double dy = y1 - y0;
    double length = dx * dx + dy * dy;
    double along = length == 0 ? 0 : -(x0 * dx + y0 * dy) / length;
    double t = Math.max(0, Math.min(1, along));
    double x = x0 + t * dx;
    double y = y0 + t * dy;
    return x * x + y * y;
  }
}
