package fewermore.classroom;

import fewermore.marking.Marks;
import fewermore.marking.Work;
import java.time.Instant;
import java.time.LocalDate;

/**
 * One try a child handed in, for ever named by work, page and seq.
 *
 * @param at when it was written, by the laptop's clock (arrival less the age the tablet gave)
 * @param day the day of the class's time zone at that moment
 * @param sitting the sitting it was sent from
 * @param told when a prompt to look again was sent for it, or null when none was
 */
public record HandIn(
    String work, String page, int seq, Instant at, LocalDate day, String sitting, String tablet,
    boolean late, Instant told, Work parts, Marks marks) {}
