package org.duskply.recipe;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.duskply.recipe.deliver.Format;
import org.duskply.recipe.shape.Fault;
import org.jspecify.annotations.Nullable;

/**
 * What may be written as the path of a file. The checks look at the text alone, the same on every
 * system; whether a file exists, or leads elsewhere by a link, is for whoever opens it.
 */
public final class FilePaths {
  /** What a deliverable's path may leave to be filled in. */
  public static final List<String> PLACEHOLDERS =
      List.of(
          "<recipe>",
          "<title>",
          "<alternate>",
          "<deliverable>",
          "<width>",
          "<height>",
          "<shot:yyyy-MM-dd>");

  private static final Pattern PLACEHOLDER = Pattern.compile("<([^<>]*)>");
  private static final Pattern DATE = Pattern.compile("[yMdHms_. -]+");
  private static final Pattern DRIVE = Pattern.compile("[A-Za-z]:.*");
  private static final Pattern ADDRESS = Pattern.compile("[A-Za-z][A-Za-z0-9+.-]+:/.*");
  private static final String FORBIDDEN = "<>:\"|?*";

  private FilePaths() {}

  /** What is wrong with the path of a file to read; null when nothing is. */
  public static @Nullable Fault frame(String path) {
    if (ADDRESS.matcher(path).matches()) {
      return fault(path, "is an address; frames are files, so give a path", "a path");
    }
    return form(path);
  }

  /** What is wrong with the path of a painted mask to read; null when nothing is. */
  public static @Nullable Fault painting(String path) {
    if (ADDRESS.matcher(path).matches()) {
      return fault(path, "is an address; painted masks are files, so give a path", "a path");
    }
    return form(path);
  }

  /** What is wrong with the path of a drawing to read; null when nothing is. */
  public static @Nullable Fault drawing(String path) {
    if (ADDRESS.matcher(path).matches()) {
      return fault(path, "is an address; outlines come from files, so give a path", "a path");
    }
    return form(path);
  }

  /** What is wrong with the path of a file to write; null when nothing is. */
  public static @Nullable Fault output(String path) {
    Matcher matcher = PLACEHOLDER.matcher(path);
    while (matcher.find()) {
      Fault fault = placeholder(matcher.group(1));
      if (fault != null) {
        return fault;
      }
    }
    String plain = matcher.replaceAll("_");
    Fault form = form(plain);
    if (form != null) {
      return form;
    }
    if (leaves(plain)) {
      String clause = "leads out of the output folder; choose that folder with --out DIR";
      return fault(path, clause, "a path inside the output folder");
    }
    for (int i = 0; i < plain.length(); i++) {
      if (FORBIDDEN.indexOf(plain.charAt(i)) >= 0) {
        String clause = "has a " + plain.charAt(i) + " in it, which not every system allows";
        return fault(path, clause, "letters, digits, spaces and -_.");
      }
    }
    if (Format.ofFile(path).isEmpty()) {
      String clause = "does not say what to write; end it in .tif, .png or .jpg";
      return fault(path, clause, "a path that ends in .tif, .png or .jpg");
    }
    return null;
  }

  /** Whether a path, by its text, leads out of the folder that it is relative to. */
  public static boolean leaves(String path) {
    if (path.startsWith("/") || DRIVE.matcher(path).matches()) {
      return true;
    }
    Deque<String> folders = new ArrayDeque<>();
    for (String segment : path.split("/", -1)) {
      if (segment.equals("..")) {
        if (folders.isEmpty()) {
          return true;
        }
        folders.pop();
      } else if (!segment.isEmpty() && !segment.equals(".")) {
        folders.push(segment);
      }
    }
    return false;
  }

  private static @Nullable Fault form(String path) {
    if (path.isBlank() || !path.equals(path.strip())) {
      return fault(path, "is empty, or has a space at an end", "a path");
    }
    if (path.indexOf('\\') >= 0) {
      String better = path.replace('\\', '/');
      return fault(path, "has backslashes; write / between folders: " + better, better);
    }
    if (path.codePoints().anyMatch(Character::isISOControl)) {
      return fault(path, "has a line end or a tab in it", "a path on one line");
    }
    if (path.endsWith("/")) {
      return fault(path, "is a folder; name a file in it", "a path of a file");
    }
    return null;
  }

  private static @Nullable Fault placeholder(String name) {
    String whole = "<" + name + ">";
    if (PLACEHOLDERS.contains(whole)) {
      return null;
    }
    if (name.startsWith("shot:")) {
      return date(name.substring("shot:".length()), whole);
    }
    String known = String.join(" ", PLACEHOLDERS);
    return new Fault(
        "", "there is no placeholder `" + whole + "`; known ones are " + known, whole, known);
  }

  private static @Nullable Fault date(String pattern, String whole) {
    String expected = "a date such as <shot:yyyy-MM-dd>";
    if (!DATE.matcher(pattern).matches() || !works(pattern)) {
      return new Fault(
          "",
          String.format(
              "`%s` is no date that can be written; use yyyy MM dd HH mm ss with - _ . or spaces"
                  + " between them, such as <shot:yyyy-MM-dd>",
              whole),
          whole,
          expected);
    }
    return null;
  }

  private static boolean works(String pattern) {
    try {
      LocalDateTime noon = LocalDateTime.of(2001, 2, 3, 12, 0);
      return !DateTimeFormatter.ofPattern(pattern, Locale.ROOT).format(noon).isBlank();
    } catch (IllegalArgumentException | java.time.DateTimeException e) {
      return false;
    }
  }

  private static Fault fault(String path, String clause, String expected) {
    String shown = path.length() > 60 ? path.substring(0, 60) + "…" : path;
    return new Fault("", "the path `" + shown + "` " + clause, path, expected);
  }
}
