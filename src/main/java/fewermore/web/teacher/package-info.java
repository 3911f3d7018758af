/**
 * What each of the teacher's pages shows: one record a page, ready to be written by its template in
 * {@code pages/teacher} or {@code pages/board}. Built from the classroom's own types; knows no requests.
 */
package fewermore.web.teacher;
