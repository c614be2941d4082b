import { ownMarkup } from '../offline/trusted';

/** The page's content policy lets no style stand in markup; it is set through the style object instead. */
const HELD_STYLE = 'data-style';
const STYLE_ELEMENT = /<style[^>]*>([\s\S]*?)<\/style>/g;

/**
 * Puts a sheet of paper into a frame of its own: nothing of the page's looks reaches it, and it prints alone.
 * Style sheets are handed over as built ones, which the content policy allows.
 */
export const fillFrame = (frame: HTMLIFrameElement, html: string): void => {
  const page = frame.contentDocument;
  const view = frame.contentWindow as (Window & { readonly CSSStyleSheet: typeof CSSStyleSheet }) | null;
  if (!page || !view) return;
  const styles: string[] = [];
  const bare = html
    .replace(STYLE_ELEMENT, (_, css: string) => {
      styles.push(css);
      return '';
    })
    .replaceAll(' style="', ` ${HELD_STYLE}="`);
  const parsed = new DOMParser().parseFromString(ownMarkup(bare), 'text/html');
  page.adoptedStyleSheets = styles.map((css) => {
    const sheet = new view.CSSStyleSheet();
    sheet.replaceSync(css);
    return sheet;
  });
  page.title = parsed.title;
  page.documentElement.lang = parsed.documentElement.lang;
  const body = page.importNode(parsed.body, true);
  for (const element of body.querySelectorAll<HTMLElement | SVGElement>(`[${HELD_STYLE}]`)) {
    element.style.cssText = element.getAttribute(HELD_STYLE) ?? '';
    element.removeAttribute(HELD_STYLE);
  }
  page.body.replaceWith(body);
};

/** Opens the browser's own print dialog for one frame. */
export const printFrame = (frame: HTMLIFrameElement): void => {
  frame.contentWindow?.focus();
  frame.contentWindow?.print();
};
