package fewermore.web;

import fewermore.store.disk.StoreState;
import io.javalin.http.Context;
import io.javalin.rendering.FileRenderer;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import java.util.function.Supplier;
import org.thymeleaf.TemplateEngine;
import org.thymeleaf.context.ITemplateContext;
import org.thymeleaf.messageresolver.AbstractMessageResolver;
import org.thymeleaf.templatemode.TemplateMode;
import org.thymeleaf.templateresolver.ClassLoaderTemplateResolver;

/**
 * Turns a template and a page model into HTML. Templates lie in {@code pages/}, texts in
 * {@code messages/}; a text that is missing stops the page, it never shows as a code.
 */
public final class Pages implements FileRenderer {
  private final TemplateEngine engine = new TemplateEngine();
  private final Assets assets;

  private Supplier<StoreState> store = () -> StoreState.RUNNING;

  /** Where every page of the teacher learns whether work is being saved. */
  void saving(Supplier<StoreState> state) {
    store = state;
  }

  private String school;

  /** @param where the school's database the classes lie in; null when they lie on this laptop */
  void inSchool(String where) {
    school = where;
  }

  public Pages(Assets assets) {
    this.assets = assets;
    ClassLoaderTemplateResolver resolver = new ClassLoaderTemplateResolver();
    resolver.setPrefix("pages/");
    resolver.setSuffix(".html");
    resolver.setTemplateMode(TemplateMode.HTML);
    resolver.setCharacterEncoding("UTF-8");
    resolver.setCacheable(true);
    engine.setTemplateResolver(resolver);
    engine.setMessageResolver(new Messages());
  }

  /** @param name for example {@code child/come-in} */
  public String render(String name, Map<String, ?> model, Locale language) {
    org.thymeleaf.context.Context context = new org.thymeleaf.context.Context(language);
    model.forEach(context::setVariable);
    context.setVariable("asset", assets);
    context.setVariable("storeState", store.get());
    context.setVariable("school", school);
    return engine.process(name, context);
  }

  @Override
  public String render(String name, Map<String, ? extends Object> model, Context request) {
    return render(name, model, Locale.ENGLISH);
  }

  /** Texts by key from the bundles, child's first. */
  private static final class Messages extends AbstractMessageResolver {
    private static final String[] BUNDLES = {"messages.child", "messages.teacher"};

    @Override
    public String resolveMessage(ITemplateContext context, Class<?> origin, String key, Object[] arguments) {
      for (String bundle : BUNDLES) {
        try {
          String text = ResourceBundle.getBundle(bundle, context.getLocale(),
              ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES)).getString(key);
          return arguments == null || arguments.length == 0 ? text
              : new java.text.MessageFormat(text, context.getLocale()).format(arguments);
        } catch (MissingResourceException e) {
          continue;
        }
      }
      throw new IllegalStateException("no text is called " + key + " in " + context.getLocale());
    }

    @Override
    public String createAbsentMessageRepresentation(
        ITemplateContext context, Class<?> origin, String key, Object[] arguments) {
      throw new IllegalStateException("no text is called " + key);
    }
  }
}
