/**
 * The file under the database: what is written is journaled, forced, and checked.
 *
 * <p>{@link fewermore.store.disk.BlockFile} keeps one file of 4,096-byte blocks in three files: the blocks
 * themselves, a journal of writes that the blocks may not hold yet, and a checksum for each block. A write is
 * kept when {@link fewermore.store.disk.BlockFile#flush} returns: the journal is then on disk. Each flush is one
 * group with one checksum, so after a power cut the file is as it was after some flush, never half of one.
 *
 * <pre>
 * BlockFile file = BlockFile.open(folder.resolve("fewermore.mv.db"), new SystemDisk());
 * file.write(bytes, 0);
 * file.flush();                       // now it is on disk
 * file.close();
 * </pre>
 *
 * <p>Not checked: that a disk which reports a force as done has done it.
 */
package fewermore.store.disk;
