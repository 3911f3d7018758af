package fewermore.classroom;

import fewermore.marking.Part;
import java.time.Instant;
import java.time.LocalDate;

/**
 * One mark of a class that the teacher set aside; the app's own is kept beside it.
 *
 * @param day when the work was written
 * @param was the app's mark by id
 * @param verdict the teacher's, by id
 * @param at when she set it aside
 */
public record OverruledMark(
    long child, String childName, LocalDate day, long problem, Part part, String was, String verdict, String note,
    Instant at) {}
