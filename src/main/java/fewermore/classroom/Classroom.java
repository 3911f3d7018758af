package fewermore.classroom;

import java.time.Instant;
import java.time.ZoneId;

/**
 * One class of one teacher.
 *
 * @param zone where the class is: decides the day a piece of work belongs to
 * @param invented true for the made-up class one can look around in
 */
public record Classroom(long id, long teacher, String name, ZoneId zone, boolean invented, Instant madeAt) {}
