package fewermore.web.child;

/**
 * One child on Come in.
 *
 * @param id goes into {@code /come-in/<id>}
 * @param here whether the child has an open sitting now
 */
public record Tile(String id, String name, ShownPicture picture, boolean here) {}
