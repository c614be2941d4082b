import { FONT_FAMILY, type InkStyle, inkStyle, type Theme } from './ink';
import { scaleD } from './path';
import type { Drawing, Primitive } from './primitives';

export type SvgOptions = {
  readonly theme?: Theme;
  /** CSS px to one unit of the sheet; the drawing's own when left out. */
  readonly px?: number;
  /** Size written in millimetres, for a true scale on paper. */
  readonly paper?: boolean;
  /** Stands inside a page that names it: no second name, nothing to focus. */
  readonly inline?: boolean;
};

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Text as it may stand in SVG and HTML, also inside a quoted attribute. Control characters that XML forbids are left out. */
export const escapeText = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are exactly the characters that XML 1.0 forbids
  text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '').replace(/[&<>"']/g, (c) => escapes[c] ?? c);

/** Three decimals, trimmed; never `-0`. */
export const trim3 = (v: number): string => {
  const r = Math.round(v * 1000) / 1000;
  return Object.is(r, -0) ? '0' : String(r);
};

const strokeOf = (s: InkStyle): string => {
  if (s.stroke === 'none' || s.width === 0) return '';
  const dash = s.dash ? ` stroke-dasharray="${s.dash.join(' ')}"` : '';
  const cap = s.cap ? ` stroke-linecap="${s.cap}"` : '';
  return ` stroke="${s.stroke}" stroke-width="${s.width}"${dash}${cap}`;
};

const fillOf = (s: InkStyle): string => (s.fill === 'none' ? '' : ` fill="${s.fill}"`);

const element = (p: Primitive, k: number, theme: Theme, inline: boolean): string => {
  if (p.form === 'group') {
    const inner = p.children.map((c) => element(c, k, theme, inline)).join('');
    return inline ? inner : `<g id="${escapeText(p.id)}" role="${p.role === 'plain' ? 'group' : 'img'}" aria-label="${escapeText(p.label)}">${inner}</g>\n`;
  }
  const style = inkStyle(p.ink, theme);
  if (p.form === 'path') return `<path d="${scaleD(p.d, k, trim3)}"${fillOf(style)}${strokeOf(style)}/>`;
  if (p.form === 'circle') return `<circle cx="${trim3(p.cx * k)}" cy="${trim3(p.cy * k)}" r="${trim3(p.r * k)}"${fillOf(style)}${strokeOf(style)}/>`;
  const [x, y] = [trim3(p.x * k), trim3(p.y * k)];
  const turn = p.rotate === undefined ? '' : ` transform="rotate(${trim3(p.rotate)} ${x} ${y})"`;
  const anchor = p.anchor === 'start' ? '' : ` text-anchor="${p.anchor}"`;
  const casing = strokeOf(style);
  const under = casing === '' ? '' : `${casing} paint-order="stroke"`;
  return `<text x="${x}" y="${y}" font-size="${trim3(p.size * k)}" font-weight="${style.weight ?? 400}" fill="${style.fill}"${under}${anchor}${turn}>${escapeText(p.text)}</text>`;
};

/**
 * A drawing as SVG text that stands alone: presentation attributes only, no style sheet, no script, nothing fetched.
 *
 * @param options.px     CSS px to one unit of the sheet
 * @param options.paper  writes the size in millimetres, so that a printed sheet has a true scale
 */
export const svgText = (drawing: Drawing, { theme = 'desk', px = drawing.px, paper = false, inline = false }: SvgOptions = {}): string => {
  const [w, h] = [drawing.width * px, drawing.height * px];
  const size = paper ? `width="${trim3((w / 96) * 25.4)}mm" height="${trim3((h / 96) * 25.4)}mm"` : `width="${trim3(w)}" height="${trim3(h)}"`;
  const name = inline ? ' aria-hidden="true"' : ` role="group" aria-label="${escapeText(drawing.title)}"`;
  const title = inline ? '' : `<title>${escapeText(drawing.title)}</title>`;
  const body = drawing.primitives.map((p) => element(p, px, theme, inline)).join('');
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size} viewBox="0 0 ${trim3(w)} ${trim3(h)}"${name} font-family="${escapeText(FONT_FAMILY)}" fill="none" stroke-linejoin="round">${title}\n${body}</svg>\n`;
};
