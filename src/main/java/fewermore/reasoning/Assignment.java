package fewermore.reasoning;

import java.util.Arrays;

/**
 * The assignment problem, solved exactly: each row one column, no column twice, so that the sum is highest. Shortest
 * augmenting paths with potentials (Kuhn 1955, Naval Research Logistics Quarterly 2:83-97; Jonker &amp; Volgenant 1987,
 * Computing 38:325-340; from memory), rows² × columns steps.
 */
final class Assignment {
  private Assignment() {}

  /**
   * The column of each row.
   *
   * @param worth at least as many columns as rows
   */
  static int[] best(double[][] worth) {
    int rows = worth.length;
    int columns = rows == 0 ? 0 : worth[0].length;
    // As in the literature, rows and columns count from 1 and 0 is a column that stands for the row being placed.
    double[] ofRow = new double[rows + 1];
    double[] ofColumn = new double[columns + 1];
    int[] rowAt = new int[columns + 1];
    int[] cameFrom = new int[columns + 1];
    for (int row = 1; row <= rows; row++) {
      rowAt[0] = row;
      int at = 0;
      double[] least = new double[columns + 1];
      Arrays.fill(least, Double.POSITIVE_INFINITY);
      boolean[] seen = new boolean[columns + 1];
      do {
        seen[at] = true;
        double step = Double.POSITIVE_INFINITY;
        int next = 0;
        for (int column = 1; column <= columns; column++) {
          if (!seen[column]) {
            double slack = -worth[rowAt[at] - 1][column - 1] - ofRow[rowAt[at]] - ofColumn[column];
            if (slack < least[column]) {
              least[column] = slack;
              cameFrom[column] = at;
            }
            if (least[column] < step) {
              step = least[column];
              next = column;
            }
          }
        }
        for (int column = 0; column <= columns; column++) {
          if (seen[column]) {
            ofRow[rowAt[column]] += step;
            ofColumn[column] -= step;
          } else {
            least[column] -= step;
          }
        }
        at = next;
      } while (rowAt[at] != 0);
      while (at != 0) {
        rowAt[at] = rowAt[cameFrom[at]];
        at = cameFrom[at];
      }
    }
    int[] columnOf = new int[rows];
    for (int column = 1; column <= columns; column++) {
      if (rowAt[column] > 0) {
        columnOf[rowAt[column] - 1] = column - 1;
      }
    }
    return columnOf;
  }
}
