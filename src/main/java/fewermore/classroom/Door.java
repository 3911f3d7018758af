package fewermore.classroom;

import java.time.LocalDate;
import java.util.List;

/**
 * What lets a tablet see a class's list today.
 *
 * @param token 40 random bits in base 32, in the Board's QR code
 * @param pictures the ids of four drawings, in the order they are to be tapped
 */
public record Door(long classroom, LocalDate day, String token, List<String> pictures) {}
