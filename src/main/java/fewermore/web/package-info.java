/**
 * The two doors: routes, handlers and page models. Tablets and the teacher's browser come in on two ports
 * with two servers, so that a teacher's page does not exist on the tablets' port.
 *
 * <p>{@link fewermore.web.TabletRoutes} and {@link fewermore.web.TeacherRoutes} are the tables of contents:
 * every route with who may use it. A handler is five movements: who, form, check, store, answer.
 */
package fewermore.web;
