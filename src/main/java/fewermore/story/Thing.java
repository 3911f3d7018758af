package fewermore.story;

/** The thing counted, one and many ("shell", "shells"); for a measure, its unit ("inch", "inches"). */
public record Thing(String one, String many) {}
