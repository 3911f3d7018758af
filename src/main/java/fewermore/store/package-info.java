/**
 * What is kept on disk, and only here SQL. Each write returns after the data are forced to disk, so that
 * "Your teacher has it" is true the moment a handler can say it.
 *
 * <p>One class a subject: {@link fewermore.store.TeacherStore}, {@link fewermore.store.ClassStore},
 * {@link fewermore.store.ProblemStore}, {@link fewermore.store.SittingStore}, {@link fewermore.store.WorkStore}.
 * The owner stands in the WHERE clause: a query that reads a class's data takes the class.
 */
package fewermore.store;
