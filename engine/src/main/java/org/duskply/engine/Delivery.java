package org.duskply.engine;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.atomic.LongAdder;
import java.util.function.BooleanSupplier;
import org.duskply.engine.deliver.Captions;
import org.duskply.engine.deliver.Encoded;
import org.duskply.engine.deliver.Extent;
import org.duskply.engine.deliver.FileNames;
import org.duskply.engine.deliver.NameValues;
import org.duskply.engine.deliver.OutFolder;
import org.duskply.engine.deliver.ResizeNode;
import org.duskply.engine.deliver.Sink;
import org.duskply.engine.deliver.SinkCost;
import org.duskply.engine.deliver.SinkSpec;
import org.duskply.engine.deliver.Sinks;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.render.BandSink;
import org.duskply.engine.render.EncodedBand;
import org.duskply.engine.render.Output;
import org.duskply.recipe.Alternate;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.Size;
import org.duskply.recipe.deliver.Deliverable;
import org.jspecify.annotations.Nullable;

/** One deliverable on its way into its file. */
final class Delivery implements AutoCloseable {
  private final String name;
  private final String alternate;
  private final Node root;
  private final SinkSpec spec;
  private final LongAdder clipped = new LongAdder();
  private final AtomicReference<@Nullable Sink> sink = new AtomicReference<>();

  private Delivery(String name, String alternate, Node root, SinkSpec spec) {
    this.name = name;
    this.alternate = alternate;
    this.root = root;
    this.spec = spec;
  }

  /**
   * Works out size, name and place; opens nothing.
   *
   * @param version the alternate that is delivered
   * @param out folder that the file's path starts from
   */
  static Delivery prepare(
      PlannedComposite composite, Version version, String name, Deliverable deliverable, Path out) {
    Extent extent = extent(composite, deliverable);
    Path target =
        OutFolder.file(out, fileName(composite, version, name, deliverable, extent.size()));
    return of(composite, version, name, deliverable, extent, target);
  }

  /** One that is only asked what it takes, and will never be written: no folder is looked at. */
  static Delivery imagined(
      PlannedComposite composite, Version version, String name, Deliverable deliverable) {
    Extent extent = extent(composite, deliverable);
    return of(composite, version, name, deliverable, extent, Path.of(name));
  }

  /** The path from the output folder. */
  static String fileName(
      PlannedComposite composite,
      Version version,
      String name,
      Deliverable deliverable,
      Size size) {
    Opening opening = composite.opening();
    String title = opening.recipe().title();
    boolean before = version.alternate().equals(Version.BEFORE);
    NameValues values =
        new NameValues(
            opening.stem(),
            title == null ? opening.stem() : title,
            before ? Alternate.MAIN : version.alternate(),
            name,
            size.width(),
            size.height(),
            composite.frames().base().source().info().exif().taken());
    return FileNames.resolve(before ? marked(deliverable.file()) : deliverable.file(), values);
  }

  /** A template whose file stands beside that of the finished picture: {@code web-before.jpg}. */
  private static String marked(String template) {
    int ending = template.lastIndexOf('.');
    return template.substring(0, ending) + "-" + Version.BEFORE + template.substring(ending);
  }

  private static Delivery of(
      PlannedComposite composite,
      Version version,
      String name,
      Deliverable deliverable,
      Extent extent,
      Path target) {
    Node picture = version.picture();
    boolean whole = extent.isWhole(composite.width(), composite.height());
    SinkSpec spec =
        new SinkSpec(
            target,
            deliverable.format(),
            deliverable.depth(),
            deliverable.profile(),
            deliverable.compress(),
            deliverable.quality(),
            deliverable.dither() && deliverable.depth() == 8,
            extent.size().width(),
            extent.size().height(),
            composite.engine().settings().bandRows(),
            composite.workingSpace(),
            deliverable.density(),
            captions(composite),
            composite.engine().deflateLevel());
    Node root = whole ? picture : new ResizeNode(picture, extent);
    return new Delivery(name, version.alternate(), root, spec);
  }

  /** Which part of the picture it shows, and how large. */
  static Extent extent(PlannedComposite composite, Deliverable deliverable) {
    int reduction = composite.opening().view().reduction();
    return Sizes.of(deliverable, composite.width(), composite.height(), reduction);
  }

  private static Captions captions(PlannedComposite composite) {
    Recipe recipe = composite.opening().recipe();
    LocalDateTime taken = composite.frames().base().source().info().exif().taken();
    return Captions.of(recipe.metadata(), recipe.title(), taken);
  }

  /**
   * Refuses deliverables that would write the same file, on file systems that tell no capitals
   * apart too.
   */
  static void refuseSameTarget(List<Delivery> deliveries) {
    Set<String> targets = new HashSet<>();
    for (Delivery delivery : deliveries) {
      if (!targets.add(delivery.spec.target().toString().toLowerCase(Locale.ROOT))) {
        throw new DuskplyException(
            "Two deliverables would be written to "
                + delivery.spec.target()
                + "; give each a file of its own.");
      }
    }
  }

  /** Begins the file. */
  void open() {
    sink.set(Sinks.open(spec));
  }

  /** The picture and where its bands go; the file need not have been begun before they come. */
  Output output() {
    return new Output(root, Region.ofSize(spec.width(), spec.height()), new Bands());
  }

  /** Writes what is left to write once all bands are there. */
  void finish(BooleanSupplier stop) {
    opened().finish(stop);
  }

  /** Gives the finished file its name. */
  Delivered.File commit() {
    opened().commit();
    double share = (double) clipped.sum() / ((double) spec.width() * spec.height());
    return new Delivered.File(
        name, alternate, spec.target(), spec.width(), spec.height(), bytes(spec.target()), share);
  }

  @Override
  public void close() {
    Sink open = sink.get();
    if (open != null) {
      open.close();
    }
  }

  private Sink opened() {
    Sink open = sink.get();
    if (open == null) {
      throw new IllegalStateException("The file has not been begun");
    }
    return open;
  }

  private static long bytes(Path file) {
    try {
      return Files.size(file);
    } catch (IOException e) {
      return -1;
    }
  }

  /** A sink as the renderer sees it. */
  private final class Bands implements BandSink {
    private final SinkCost cost = Sinks.cost(spec);

    @Override
    public EncodedBand encode(int band, Planes rows) {
      return opened().encode(band, rows);
    }

    @Override
    public void append(int band, EncodedBand encoded) {
      Encoded bytes = (Encoded) encoded;
      opened().append(band, bytes);
      clipped.add(bytes.clipped());
    }

    @Override
    public void describe(KeyWriter key) {
      spec.describe(key);
    }

    @Override
    public long encodeBytes(Region band) {
      return cost.encodeBytes().applyAsLong(band.height());
    }

    @Override
    public long heldBytes() {
      return cost.heldBytes();
    }
  }
}
