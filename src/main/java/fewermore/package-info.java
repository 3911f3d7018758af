/** Settings, wiring, start. */
package fewermore;
