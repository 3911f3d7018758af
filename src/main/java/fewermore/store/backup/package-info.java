/**
 * Backups: one file that holds all of a data folder, but for invented classes, and can be read by a later Fewermore
 * on another machine.
 *
 * <pre>
 * FEWERMORE-BACKUP {"made":"2026-11-25T21:30:00Z","data":"001","pieces":412,"why":"day","lock":null}
 * then, compressed (and locked where a passphrase was asked for), lines of UTF-8, each ended by a line feed:
 *   {"table":"CHILD","columns":["ID",…],"kinds":"nnsssnts…"}     a table, those it refers to first
 *   [1,1,"Noor",…]                                               its rows in their order
 *   {"rows":3,"sha256":"…"}                                      at the end: how many lines of rows, and the hash of all
 * </pre>
 *
 * <p>A file under its final name was verified: read back into a scratch database, written from there again, and found
 * to be the same.
 */
package fewermore.store.backup;
