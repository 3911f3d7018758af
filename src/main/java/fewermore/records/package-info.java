/**
 * What the teacher takes away: tables of values, and their form as comma-separated values. Knows no pages
 * and no SQL.
 *
 * <pre>{@code
 * Table table = ProgressTable.childByKind(room, classList, work);
 * String csv = Csv.write(table, Csv.Mark.NONE);
 * }</pre>
 */
package fewermore.records;
