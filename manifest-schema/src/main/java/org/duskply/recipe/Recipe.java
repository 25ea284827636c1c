package org.duskply.recipe;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.duskply.recipe.deliver.Deliverable;
import org.duskply.recipe.deliver.Metadata;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Rule;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Values;
import org.duskply.recipe.step.Step;
import org.jspecify.annotations.Nullable;

/**
 * A whole recipe, checked: every name it mentions exists, every number is in its range.
 *
 * @param version format version; 1
 * @param needs lowest schema revision that knows every key used
 * @param title what the picture is called, for people and file names
 * @param notes the photographer's own words
 * @param grid the size on which positions and lengths were read; absent: the base's own size
 * @param base name of the frame that the picture starts from
 * @param before name of the frame that a before/after view compares with
 * @param working primaries of the linear working space; absent: those of the base frame's profile
 * @param frames frames by name, in the order of the file
 * @param masks masks by name, in the order of the file
 * @param steps from the first done to the last
 * @param finish what is done once the picture is composed: crop, last steps
 * @param alternates the same picture for other purposes by name, in the order of the file
 * @param deliverables files for the client by name, in the order of the file
 * @param metadata what delivered files say about themselves
 * @param extensions the user's own {@code x-} keys, kept as they are
 * @param places where in the file each part stands
 */
public record Recipe(
    int version,
    int needs,
    @Nullable String title,
    @Nullable String notes,
    @Nullable Size grid,
    String base,
    String before,
    @Nullable NamedSpace working,
    Map<String, Frame> frames,
    Map<String, Mask> masks,
    List<Step> steps,
    Finish finish,
    Map<String, Alternate> alternates,
    Map<String, Deliverable> deliverables,
    Metadata metadata,
    Map<String, Object> extensions,
    Places places) {
  /** The format version that is read and written here. */
  public static final int VERSION = 1;

  /** The highest schema revision whose keys are known here. */
  public static final int REVISION = 1;

  /** How a recipe writes it. */
  public static final Shape<Recipe> SHAPE =
      Shape.mapping(
              Recipe.class,
              "recipe",
              "How a finished picture is made from the frames of one camera position.",
              Field.whole("version", VERSION, VERSION)
                  .key("duskply")
                  .says("Version of the format; stands first by custom.")
                  .example("1"),
              Field.whole("needs", 1, REVISION)
                  .byDefault(1)
                  .says("The lowest schema revision that knows every key used; written by tools.")
                  .example("1"),
              Field.text("title", Limits.TITLE)
                  .optional()
                  .forPeople()
                  .says("What the picture is called, for people and file names.")
                  .example("\"Boathouse café: pontoon side\""),
              Field.text("notes", Limits.TEXT)
                  .optional()
                  .forPeople()
                  .says("The photographer's own words.")
                  .example("\"client wants the lanterns warm\""),
              Field.of("grid", new Kind.Nested(() -> Size.SHAPE))
                  .optional("the base's own size")
                  .says("Size of the picture on which positions and lengths were read.")
                  .example("[6000, 4000]"),
              Field.of("base", new Kind.Mention(NameList.FRAMES))
                  .says("The frame that the picture starts from.")
                  .example("dusk"),
              Field.of("before", new Kind.Mention(NameList.FRAMES))
                  .byDefault("the base", Recipe::usualBefore)
                  .says("The frame that a before/after view compares with.")
                  .example("test-shot"),
              Field.word("working", NamedSpace.values())
                  .optional("the primaries of the base frame's profile")
                  .says("Primaries of the linear working space.")
                  .example("rec2020"),
              Field.of("frames", new Kind.Table(NameList.FRAMES, () -> Frame.SHAPE, Frame::chains))
                  .says("The frames by name.")
                  .example("{ dusk: frames/bh-0007.tif }"),
              Field.of("masks", new Kind.Table(NameList.MASKS, () -> Mask.SHAPE))
                  .byDefault(Map.of())
                  .says("Masks by name.")
                  .example("{ hull: { polygon: \"1210,2204 1633,2190 1702,2410\" } }"),
              Field.list("steps", "step", 0, Limits.STEPS, () -> Step.SHAPE)
                  .byDefault(List.of())
                  .says("What is done, from the first step to the last.")
                  .example("[{ pop: pop-hull, mask: hull }]"),
              Field.of("finish", new Kind.Nested(() -> Finish.SHAPE))
                  .byDefault("nothing", values -> Finish.NONE)
                  .says("What is done once the picture is composed: a crop, and last steps.")
                  .example("{ crop: { left: 120, top: 80, width: 5760, height: 3840 } }"),
              Field.of("alternates", new Kind.Table(NameList.ALTERNATES, () -> Alternate.SHAPE))
                  .byDefault(Map.of())
                  .says("The same picture for other purposes, by name.")
                  .example("{ no-fire: { skip: [ember] } }"),
              Field.of(
                      "deliverables",
                      new Kind.Table(
                          NameList.DELIVERABLES, () -> Deliverable.SHAPE, Deliverable::sameFiles))
                  .byDefault(Map.of())
                  .says("Files for the client by name.")
                  .example("{ web: { file: out/<title>.jpg, long-edge: 2048 } }"),
              Field.of("metadata", new Kind.Nested(() -> Metadata.SHAPE))
                  .byDefault("nothing", values -> Metadata.NONE)
                  .says("What delivered files say about themselves.")
                  .example("{ creator: \"A. Keeper\", keywords: [boathouse, dusk] }"),
              Field.extensions(),
              Field.derived("places", List.of(), values -> Places.NONE))
          .rules(
              new Rule(List.of("grid", "finish"), Recipe::cropFaults),
              new Rule(
                  List.of("alternates"),
                  values -> tooMany(values, NameList.ALTERNATES, Limits.ALTERNATES)),
              new Rule(
                  List.of("deliverables"),
                  values -> tooMany(values, NameList.DELIVERABLES, Limits.DELIVERABLES)))
          .reserves("include", "lock", "looks");

  /** Copies lists and maps, which keep the order of the file. */
  public Recipe {
    frames = Collections.unmodifiableMap(new LinkedHashMap<>(frames));
    masks = Collections.unmodifiableMap(new LinkedHashMap<>(masks));
    steps = List.copyOf(steps);
    alternates = Collections.unmodifiableMap(new LinkedHashMap<>(alternates));
    deliverables = Collections.unmodifiableMap(new LinkedHashMap<>(deliverables));
    extensions = Collections.unmodifiableMap(new LinkedHashMap<>(extensions));
  }

  /** The same recipe with another base; what it is compared with stays. */
  public Recipe withBase(String newBase) {
    return with("base", newBase);
  }

  /** The same recipe with other frames. */
  public Recipe withFrames(Map<String, Frame> newFrames) {
    return with("frames", newFrames);
  }

  /** The same recipe with other masks. */
  public Recipe withMasks(Map<String, Mask> newMasks) {
    return with("masks", newMasks);
  }

  /** The same recipe with other steps. */
  public Recipe withSteps(List<Step> newSteps) {
    return with("steps", newSteps);
  }

  /** The same recipe with another finish. */
  public Recipe withFinish(Finish newFinish) {
    return with("finish", newFinish);
  }

  /** The same recipe with other alternates. */
  public Recipe withAlternates(Map<String, Alternate> newAlternates) {
    return with("alternates", newAlternates);
  }

  /** The same recipe with other deliverables. */
  public Recipe withDeliverables(Map<String, Deliverable> newDeliverables) {
    return with("deliverables", newDeliverables);
  }

  /** The same recipe with other metadata. */
  public Recipe withMetadata(Metadata newMetadata) {
    return with("metadata", newMetadata);
  }

  /** The same recipe with other places. */
  public Recipe withPlaces(Places newPlaces) {
    return with("places", newPlaces);
  }

  private Recipe with(String component, Object value) {
    Values values = SHAPE.values(this);
    values.put(component, value);
    return SHAPE.build(values);
  }

  /** A recipe of a base frame and steps, without anything else. */
  public static Recipe of(String base, Map<String, Frame> frames, List<Step> steps) {
    return new Recipe(
        VERSION,
        1,
        null,
        null,
        null,
        base,
        base,
        null,
        frames,
        Map.of(),
        steps,
        Finish.NONE,
        Map.of(),
        Map.of(),
        Metadata.NONE,
        Map.of(),
        Places.NONE);
  }

  private static @Nullable Object usualBefore(Values values) {
    return values.has("base") ? values.get("base") : null;
  }

  private static List<Fault> cropFaults(Values values) {
    Size grid = (Size) values.get("grid");
    Crop crop = values.get("finish", Finish.class).crop();
    return grid == null || crop == null || crop.inside(grid)
        ? List.of()
        : List.of(crop.fault(grid));
  }

  private static List<Fault> tooMany(Values values, NameList list, int most) {
    int count = values.get(list.key(), Map.class).size();
    return count <= most
        ? List.of()
        : List.of(
            new Fault(
                list.key(),
                "there are " + count + " " + list.key() + "; the limit is " + most,
                count + " " + list.key(),
                "at most " + most));
  }
}
