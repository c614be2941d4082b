import type { EntryId, RigId, Side, StationId } from '../../../../src/terms';

/** What one step of Undo would take back when the person has already walked on. */
export type LastKept = { readonly rig: RigId; readonly entry: EntryId; readonly kind: string; readonly station: StationId; readonly side: Side; readonly words: string };

const KEY = 'seamward-last-kept';

let last: LastKept | undefined;

const load = (): LastKept | undefined => {
  try {
    return JSON.parse(sessionStorage.getItem(KEY) ?? 'null') ?? undefined;
  } catch {
    return undefined;
  }
};

export const rememberKept = (kept: LastKept): void => {
  last = kept;
  try {
    sessionStorage.setItem(KEY, JSON.stringify(kept));
  } catch {
    // Without it Undo reaches back only until the page is reloaded.
  }
};

export const lastKept = (rig: RigId): LastKept | undefined => {
  last ??= load();
  return last?.rig === rig ? last : undefined;
};

export const forgetKept = (): void => {
  last = undefined;
  try {
    sessionStorage.removeItem(KEY);
  } catch {
    // As above.
  }
};

const SHORT_MS = 40;
const PAUSE_MS = 80;

/** One short pulse when an answer is kept, two when something stands against moving; phones without it stay silent. */
export const buzz = (times: 1 | 2): void => {
  if (!('vibrate' in navigator) || window.matchMedia('(prefers-reduced-motion: reduce)').matches) return;
  if (!navigator.userActivation?.isActive) return;
  navigator.vibrate(times === 1 ? SHORT_MS : [SHORT_MS, PAUSE_MS, SHORT_MS]);
};
