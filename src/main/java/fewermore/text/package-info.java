/** Places in a text: what the other packages point with. Knows no language and no page. */
package fewermore.text;
