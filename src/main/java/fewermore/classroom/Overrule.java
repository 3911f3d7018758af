package fewermore.classroom;

import fewermore.marking.Part;
import java.time.Instant;

/** A mark the teacher set aside: what it was, what she says, and why. The latest counts. */
public record Overrule(Part part, String was, String verdict, String note, Instant at) {}
