package fewermore.web.child;

import java.util.List;

/**
 * Come in, with today's door open: {@code pages/child/come-in.html}.
 *
 * @param language {@code en} or {@code es}
 */
public record ComeInPage(String language, List<Tile> tiles) {
  public ComeInPage {
    tiles = List.copyOf(tiles);
  }
}
