package fewermore.web.child;

/**
 * One of the two bars a child draws.
 *
 * @param id what {@link fewermore.marking.Bars#longer} says when this bar is the longer one
 * @param name what the child reads on the bar
 */
public record Lane(String id, String name) {}
