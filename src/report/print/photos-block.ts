import type { State } from '../../logbook';
import { type Finding, isOpen, type Plan, takenAs } from '../../plan';
import type { Rig } from '../../rig';
import { byUrgency, type Hash } from '../../terms';
import { showDay } from '../../units';
import { e } from './sheet-page';

/** A photograph as it stands beside its finding. */
export type FindingPhoto = { readonly hash: Hash; readonly words: string };

/** At one finding: one near, one from further off. */
const MOST_AT_ONE = 2;
/** In one document, so that it can still be sent; the most urgent findings come first. */
const MOST = 40;

/** Photographs of the looks that a finding rests on, the latest look first, each once. */
export const photosOf = (state: State<Rig>, finding: Finding): readonly FindingPhoto[] => {
  const looks = [...new Set(finding.because.flatMap((b) => b.entries))].flatMap((id) => state.standing.get(id) ?? []).toSorted((a, b) => b.day - a.day);
  const found = new Map<Hash, FindingPhoto>();
  for (const look of looks) for (const { hash } of look.entry.photos ?? []) if (!found.has(hash)) found.set(hash, { hash, words: `${showDay(look.day, true)}, ${look.entry.by}` });
  return [...found.values()].slice(0, MOST_AT_ONE);
};

/** Findings that have a page of their own in the record: what is only watched stands in the list alone. */
export const hasOwnPart = (finding: Finding): boolean => isOpen(finding) && takenAs(finding) !== 'watch';

/** The photographs a condition record shows, by their hashes. */
export const photosToPrint = (state: State<Rig>, plan: Plan): readonly Hash[] => {
  const findings = plan.findings.filter(hasOwnPart).toSorted((a, b) => byUrgency(takenAs(a), takenAs(b)));
  return [...new Set(findings.flatMap((f) => photosOf(state, f).map((p) => p.hash)))].slice(0, MOST);
};

const HIGH_MM = 42;
const WIDE_MM = 60;
const CAPTION_MM = 5;

/** The photographs of one finding side by side, whole and not cropped, each with its day and who took it down. */
export const photosHtml = (photos: readonly FindingPhoto[], pictures: Readonly<Record<Hash, string>>): { readonly html: string; readonly mm: number } => {
  const shown = photos.flatMap((p) => {
    const src = pictures[p.hash];
    return src === undefined ? [] : [{ ...p, src }];
  });
  const missing = photos.length - shown.length;
  const note = missing === 0 ? '' : `<small>${missing === 1 ? 'One photograph' : `${missing} photographs`} more in the logbook.</small>`;
  if (shown.length === 0) return { html: note, mm: note === '' ? 0 : CAPTION_MM };
  const figures = shown.map(
    (p) =>
      `<div style="max-width:${WIDE_MM}mm"><img alt="${e(`Photograph, ${p.words}`)}" src="${e(p.src)}" style="display:block;height:${HIGH_MM}mm;max-width:${WIDE_MM}mm;object-fit:contain;object-position:left top;filter:grayscale(1)"><small>${e(p.words)}</small></div>`,
  );
  return { html: `<div style="display:flex;gap:4mm;padding-top:2.5mm">${figures.join('')}</div>${note}`, mm: 2.5 + HIGH_MM + CAPTION_MM + (note === '' ? 0 : CAPTION_MM) };
};
