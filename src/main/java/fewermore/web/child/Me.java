package fewermore.web.child;

/** The child whose page this is: first name and own picture, nothing else. */
public record Me(String name, ShownPicture picture) {}
