/** Stories, readings, work and marks as JSON: one form for the commands, the tablets and the store. */
package fewermore.json;
