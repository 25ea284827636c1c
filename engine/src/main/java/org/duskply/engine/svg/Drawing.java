package org.duskply.engine.svg;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.duskply.engine.pixel.Affine;
import org.duskply.recipe.NearestName;
import org.jspecify.annotations.Nullable;

/**
 * A drawing that is laid over the base, so that its {@code viewBox} fills the grid by its {@code
 * preserveAspectRatio} (centred, all of it to be seen, where it says nothing). Without a viewBox
 * its width and height take that place; without these a user unit is a pixel of the grid.
 * Immutable.
 */
public final class Drawing {
  /** What a style sheet could say that changes an outline. */
  private static final Pattern SHAPING =
      Pattern.compile("(?:fill-rule|clip-rule|display|visibility|transform)\\s*:|\\bd\\s*:");

  private final String file;
  private final SvgElement root;
  private final @Nullable ViewBox box;
  private final boolean shapingSheet;
  private final Map<String, SvgElement> byId = new LinkedHashMap<>();
  private final Set<String> twice = new HashSet<>();

  private Drawing(String file, SvgReader.Read read) {
    this.file = file;
    this.root = read.root();
    this.shapingSheet = SHAPING.matcher(read.sheet()).find();
    index();
    this.box = viewBox();
  }

  /**
   * Reads a drawing.
   *
   * @param file what it is called in sentences
   * @param bytes all of the file, at most {@link SvgLimits#FILE_BYTES}
   * @throws DrawingException where it is none, or beyond the limits of {@link SvgLimits}
   */
  public static Drawing read(String file, byte[] bytes) {
    if (bytes.length > SvgLimits.FILE_BYTES) {
      throw new DrawingException(file + " is larger than 64 MB, the most of a drawing.");
    }
    return new Drawing(file, SvgReader.read(file, bytes));
  }

  private void index() {
    Deque<SvgElement> open = new ArrayDeque<>(List.of(root));
    while (!open.isEmpty()) {
      SvgElement e = open.pop();
      if (!e.id().isEmpty() && byId.putIfAbsent(e.id(), e) != null) {
        twice.add(e.id());
      }
      List<SvgElement> children = e.children();
      for (int i = children.size() - 1; i >= 0; i--) {
        open.push(children.get(i));
      }
    }
  }

  private @Nullable ViewBox viewBox() {
    String text = root.attribute("viewBox");
    if (text != null) {
      ViewBox given = ViewBox.parse(text);
      if (given == null) {
        throw new SvgShapes(file, 0, 0).unreadable(root, "viewBox");
      }
      return given;
    }
    Double width = ownSize("width");
    Double height = ownSize("height");
    return width == null || height == null ? null : new ViewBox(0, 0, width, height);
  }

  /** The root's width or height; null where it is none, or a share of something unknown. */
  private @Nullable Double ownSize(String attribute) {
    String text = root.attribute(attribute);
    if (text == null || text.contains("%") || text.strip().equals("auto")) {
      return null;
    }
    double size = new SvgShapes(file, 0, 0).length(root, attribute, 0, 0);
    return size > 0 ? size : null;
  }

  /**
   * What is wrong where the drawing has another shape than the grid; null where it fits. It fits
   * where no side would be off by a pixel of the grid.
   */
  public @Nullable String misfit(double width, double height) {
    if (box == null || Math.abs(box.height() * (width / box.width()) - height) < 1) {
      return null;
    }
    return String.format(
        Locale.ROOT,
        "%s is drawn on %s × %s (%.4g : 1) and the picture is %s × %s (%.4g : 1)",
        file,
        plain(box.width()),
        plain(box.height()),
        box.width() / box.height(),
        plain(width),
        plain(height),
        width / height);
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf((float) value);
  }

  /** Whether it says itself how it is to be laid over a picture of another shape. */
  public boolean saysHowItFits() {
    return root.attribute("preserveAspectRatio") != null;
  }

  /** Whether a style sheet in it says something about outlines; style sheets are not read. */
  public boolean hasShapingSheet() {
    return shapingSheet;
  }

  /** Told what is wrong with one of the ids that are asked for. */
  public interface Complaint {
    /** The id with that place in the list, or the drawing itself where there is no list. */
    void about(int place, DrawingException fault);
  }

  /**
   * The outlines of all shapes that it shows, or of those that are asked for.
   *
   * @param ids of shapes or of groups; empty: all shapes that it shows
   * @param width of the grid
   * @param height of the grid
   * @param complaint told of an id that is not there, or there twice, or has no inside, and of a
   *     shape that cannot be read
   */
  public List<DrawnShape> shapes(
      List<String> ids, double width, double height, Complaint complaint) {
    Affine map =
        box == null
            ? Affine.IDENTITY
            : box.into(width, height, root.attribute("preserveAspectRatio"));
    double across = box == null ? width : box.width();
    double down = box == null ? height : box.height();
    SvgWalk walk = new SvgWalk(file, byId);
    for (int i = 0; i < Math.max(1, ids.size()); i++) {
      try {
        if (ids.isEmpty()) {
          all(walk, map, across, down);
        } else {
          one(ids.get(i), walk, map, across, down);
        }
      } catch (DrawingException e) {
        complaint.about(i, e);
      }
    }
    return List.copyOf(walk.shapes());
  }

  private void all(SvgWalk walk, Affine map, double across, double down) {
    walk.all(root, map, across, down);
    if (walk.shapes().isEmpty()) {
      throw new DrawingException(file + " shows no shape with an inside.");
    }
  }

  private void one(String id, SvgWalk walk, Affine map, double across, double down) {
    SvgElement asked = find(id);
    int before = walk.shapes().size();
    walk.one(asked, map, across, down);
    if (walk.shapes().size() == before) {
      throw empty(asked);
    }
  }

  private SvgElement find(String id) {
    SvgElement asked = byId.get(id);
    String shown = "`" + SvgWords.quoted(id) + "`";
    if (asked == null) {
      String advice =
          NearestName.among(byId.keySet(), id)
              .map(nearest -> "; did you mean `" + SvgWords.quoted(nearest) + "`?")
              .orElse(".");
      throw new DrawingException(file + " has no element with the id " + shown + advice);
    }
    if (twice.contains(id)) {
      throw new DrawingException(
          file + " has more than one element with the id " + shown + "; ids must differ.");
    }
    return asked;
  }

  private DrawingException empty(SvgElement asked) {
    boolean group = asked.is("g", "a", "switch", "svg", "use", "clipPath");
    String what =
        group
            ? " holds no shape with an inside"
            : SvgShapes.isShape(asked)
                ? " draws nothing"
                : " is a `" + asked.name() + "`, which has no inside";
    return new DrawingException(asked.shown() + " in " + file + what + ".");
  }
}
