import { escapeText, FONT_FAMILY, linesOf } from '../../drawing';

/**
 * Sheets of paper as HTML text that stands alone. A document is a list of blocks whose heights are known,
 * so that every sheet can say which of how many it is. Black on white first: rules, weights and shapes carry everything.
 */
export type Paper = 'A4' | 'Letter';

/** Sizes and margins. [mm] */
export const PAPERS: Readonly<Record<Paper, { readonly w: number; readonly h: number; readonly side: number; readonly top: number; readonly foot: number }>> = {
  A4: { w: 210, h: 297, side: 15, top: 13, foot: 12 },
  Letter: { w: 215.9, h: 279.4, side: 14, top: 12, foot: 11 },
};

const BLOCK_MM = 15;
const ABOVE_BLOCK_MM = 4;

/** Width and height that a sheet leaves for blocks. [mm] */
export const roomOn = (paper: Paper): { readonly w: number; readonly h: number } => {
  const p = PAPERS[paper];
  return { w: p.w - 2 * p.side, h: p.h - p.top - p.foot - BLOCK_MM - ABOVE_BLOCK_MM };
};

/** One piece of a sheet. Its height is kept on the page, so that what was counted is what is printed. */
export type Block = {
  readonly html: string;
  readonly mm: number;
  /** Never the last on a sheet: a heading. */
  readonly keep?: boolean;
  /** Column heads: repeated at the top of a further sheet that begins with one of their rows. */
  readonly head?: boolean;
  readonly row?: boolean;
};

/** Foot of every sheet. */
export type TitleBlock = {
  readonly paper: Paper;
  readonly title: string;
  readonly about: string;
  readonly rig: string;
  readonly rigWords: string;
  readonly date: string;
  readonly person: string;
  /** Digest of the logbook, 64 hexadecimal digits; lines to write on when it is not given. */
  readonly digest?: string;
  /** True scale of the drawing on the first sheet: `1:75`. */
  readonly scale?: string;
};

export const e = escapeText;

const PT_MM = 25.4 / 72;

/** Height of a paragraph. [mm] */
export const paragraphMm = (text: string, pt: number, column_mm: number, bold = false, leading = 1.36): number =>
  linesOf(text, pt * PT_MM * 1.03, column_mm, bold) * pt * leading * PT_MM;

const CSS = (paper: Paper): string => {
  const p = PAPERS[paper];
  return `@page{size:${p.w}mm ${p.h}mm;margin:0}
*{box-sizing:border-box;margin:0;padding:0}
html{-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{font:400 9pt/1.36 ${FONT_FAMILY};color:#000;background:#fff;font-variant-numeric:tabular-nums lining-nums}
.page{position:relative;overflow:hidden;width:${p.w}mm;height:${p.h - 0.1}mm;padding:${p.top}mm ${p.side}mm ${p.foot}mm;break-after:page;display:flex;flex-direction:column}
.page:last-child{break-after:auto}
.b{flex:none;overflow:visible}
h1{font-size:21pt;line-height:1.1;font-weight:700;letter-spacing:-.02em}
h2{font-size:11.5pt;line-height:1.25;font-weight:700}
h3{font-size:9pt;line-height:1.36;font-weight:700}
small,.s{font-size:7.8pt;line-height:1.3}
.top{display:flex;justify-content:space-between;align-items:flex-start;border-bottom:1mm solid #000;padding-bottom:3mm}
.sub{font-size:9.5pt;margin-top:1mm}
.stand{display:flex;align-items:center;gap:4mm;font-size:11.5pt;font-weight:700;line-height:1.15}
.stand small{display:block;font-weight:400;font-size:8.5pt;margin-top:.6mm}
.cols{display:flex}
.r{display:flex;align-items:center;border-bottom:.2mm solid #000;height:100%}
.r>*{flex:none;padding-right:2mm}
.heads{display:flex;align-items:flex-end;border-bottom:.6mm solid #000;font-size:7.8pt;height:100%;padding-bottom:.8mm}
.heads>*{flex:none;padding-right:2mm}
.group{display:flex;align-items:flex-end;border-bottom:.35mm solid #000;height:100%;padding-bottom:.8mm;font-weight:700}
.n{text-align:right;font-weight:700}
.line{display:inline-block;border-bottom:.35mm solid #000;height:4.6mm;vertical-align:baseline}
.tick{display:inline-block;width:4.4mm;height:4.4mm;border:.45mm solid #000;vertical-align:-.9mm;margin-right:1.4mm}
.ring{display:inline-flex;width:5.6mm;height:5.6mm;border:.35mm solid #000;border-radius:50%;align-items:center;justify-content:center;font-size:8.5pt;margin-right:1.3mm}
.mk{display:inline-block;line-height:0;vertical-align:middle}
.wrap{overflow-wrap:anywhere}
.caution{border-left:1mm solid #000;padding-left:2.4mm}
.block{margin-top:auto;flex:none;height:${BLOCK_MM}mm;display:flex;border:.6mm solid #000;font-size:7.6pt;line-height:1.3}
.block>div{padding:1.2mm 2mm;border-left:.35mm solid #000;overflow:hidden}
.block>div:first-child{border-left:0}
.block b{display:block;font-size:9pt;white-space:nowrap}
.hex{font:6.4pt/1.36 "DejaVu Sans Mono",ui-monospace,Menlo,Consolas,monospace;white-space:nowrap}
@media screen{body{background:#888}.page{background:#fff;margin:4mm auto}}`;
};

/** 64 digits as two lines of four groups. */
const grouped = (digest: string): readonly string[] => (digest.match(/.{1,32}/g) ?? []).map((line) => (line.match(/.{1,8}/g) ?? []).join(' '));

const titleBlock = (t: TitleBlock, n: number, of: number): string => {
  const digest = t.digest === undefined ? '<span class="line" style="width:100%"></span>' : `<span class="hex">${grouped(t.digest).map(e).join('<br>')}</span>`;
  const person = t.person === '' ? '<span class="line" style="width:80%"></span>' : e(t.person);
  return `<div class="block"><div style="flex:2.1"><b>${e(t.title)}</b>${e(t.about)}</div><div style="flex:2"><b>${e(t.rig)}</b>${e(t.rigWords)}</div><div style="flex:2.1"><b>${e(t.date)}</b>${person}</div><div style="flex:3.3">Digest of the logbook<br>${digest}</div><div style="flex:.95"><b>${n} of ${of}</b>${n === 1 && t.scale !== undefined ? e(t.scale) : ''}</div></div>`;
};

type Sheet = readonly Block[];

/** Fills sheets in order. A block that is higher than a sheet gets one of its own. */
export const paginate = (blocks: readonly Block[], room_mm: number): readonly Sheet[] => {
  const sheets: Block[][] = [];
  let sheet: Block[] = [];
  let used = 0;
  let head: Block | undefined;
  const turn = (): void => {
    if (sheet.length > 0) sheets.push(sheet);
    sheet = [];
    used = 0;
  };
  blocks.forEach((block, i) => {
    const next = blocks[i + 1];
    const needs = block.mm + (block.keep && next ? next.mm + (next.keep ? (blocks[i + 2]?.mm ?? 0) : 0) : 0);
    if (used > 0 && used + needs > room_mm) {
      turn();
      if (head && block.row) {
        sheet.push(head);
        used = head.mm;
      }
    }
    if (block.head) head = block;
    sheet.push(block);
    used += block.mm;
  });
  turn();
  return sheets;
};

/** The whole document. */
export const printed = (title: TitleBlock, blocks: readonly Block[]): string => {
  const sheets = paginate(blocks, roomOn(title.paper).h);
  const pages = sheets.map(
    (sheet, i) =>
      `<section class="page">${sheet.map((b) => `<div class="b" style="height:${b.mm.toFixed(2)}mm">${b.html}</div>`).join('\n')}${titleBlock(title, i + 1, sheets.length)}</section>`,
  );
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>${e(`${title.title}, ${title.rig}, ${title.date}`)}</title><style>${CSS(title.paper)}</style></head>
<body>
${pages.join('\n')}
</body></html>
`;
};
