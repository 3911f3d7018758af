/**
 * The child's pages: one record a page, holding all that its template shows. They are filled by the
 * routes and know no SQL. The templates stand in {@code pages/child/}, their texts in
 * {@code messages/child.properties}, their script in {@code static/js/}.
 *
 * <p>A template gets three variables: {@code page}, one of these records; {@code asset}, whose
 * {@code of("css/child.css")} is the address of a static file; {@code csrf}, the token every form sends.
 *
 * <p>Not here: what a child's work is marked as. A page only shows the signs and prompts it is given.
 */
package fewermore.web.child;
