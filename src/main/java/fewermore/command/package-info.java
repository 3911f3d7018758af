/**
 * The headless commands: JSON lines from standard input to standard output, by the same code as the pages.
 */
package fewermore.command;
