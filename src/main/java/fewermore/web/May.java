package fewermore.web;

/** Who may use a route. */
public enum May {
  /** Whoever can reach the port. */
  ANYONE,
  /** A tablet that came in by today's door of a class. */
  DOOR,
  /** A tablet on which a child's sitting is open; it reaches that child's own work only. */
  CHILD,
  /** Whoever holds the key of a sitting: may add work to it, and nothing else. On the teacher's port: the token of the data folder. */
  KEY,
  /** The signed-in teacher, for her own classes. */
  TEACHER,
  /** The signed-in teacher, or the substitute of one class, who sees no child's record. */
  SUBSTITUTE
}
