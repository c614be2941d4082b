import { kindById } from '../../../../src/entries';
import type { Scale } from '../../../../src/plan';
import type { AnyKind, EntryId, FacePoint } from '../../../../src/terms';
import type { Answers, Raw } from '../visit/form';
import type { Step } from './wall-measure';

/** Which kind of entry a meter's reading is: three scales that are never mixed. */
const KIND: Readonly<Record<Scale, string>> = { pin: 'wood-moisture-pin', pinless: 'wood-moisture-pinless', relative: 'moisture-relative' };
export const kindOf = (scale: Scale): AnyKind => kindById(KIND[scale]) as AnyKind;

export const SCALES: readonly Scale[] = ['pin', 'pinless', 'relative'];
export const SCALE_WORD: Readonly<Record<Scale, string>> = { pin: 'Pin', pinless: 'Pinless', relative: 'Relative' };

/** What is told once and goes with every reading of the day, whatever the wall. */
export type Told = {
  readonly day: string;
  readonly scale: Scale;
  readonly meter: string;
  readonly material: string | undefined;
  readonly wood_temperature: Raw | undefined;
};

export type Surface = 'dry' | 'wet' | 'frozen';

export type Kept = { readonly entry: EntryId; readonly point_m: FacePoint; readonly text: string; readonly dry: boolean };
/** A place that is to be read, and why. */
export type ToRead = { readonly point_m: FacePoint; readonly words: string /** It was a dry place to compare with, and is asked as one again. */; readonly dry?: boolean };

/** One series of readings on one side of one face. It is saved at every touch. */
export type Series = {
  readonly day: string;
  readonly step: Step;
  readonly point_m: FacePoint | undefined;
  readonly reading: Raw | undefined;
  /** This one is a dry place to compare with. */
  readonly dry: boolean;
  readonly surface: Surface;
  /** Kept from here, oldest first: what Undo takes back. */
  readonly kept: readonly Kept[];
};

export const begun = (day: string): Series => ({
  day,
  step: 'coarse',
  point_m: undefined,
  reading: undefined,
  dry: false,
  surface: 'dry',
  kept: [],
});

/** What the draft held, if it is of today and was made by this version. */
export const restored = (saved: unknown, day: string): Series | undefined => {
  const found = saved as Partial<Series> | undefined;
  return typeof found === 'object' && found !== null && found.day === day && Array.isArray(found.kept) ? { ...begun(day), ...found } : undefined;
};

/** The form that these make: only what this meter's kind asks for. */
export const answersOf = (told: Told, series: Series): Answers => {
  const all: Readonly<Record<string, Raw | undefined>> = {
    reading: series.reading,
    wood_temperature: told.wood_temperature,
    material: told.material,
    surface: series.surface,
    dry_reference: series.dry || undefined,
    meter: told.meter === '' ? undefined : told.meter,
  };
  const { fields } = kindOf(told.scale);
  return Object.fromEntries(Object.entries(all).filter(([key, value]) => value !== undefined && key in fields)) as Answers;
};

export const samePoint = (a: FacePoint, b: FacePoint): boolean => Math.abs(a[0] - b[0]) < 5e-4 && Math.abs(a[1] - b[1]) < 5e-4;

/** After a reading is in the logbook: the next place is open, and what was told of this place alone is forgotten. */
export const wasKept = (series: Series, entry: EntryId, enough: boolean): Series => {
  const { point_m, reading } = series;
  if (point_m === undefined) return series;
  const text = typeof reading === 'object' && 'text' in reading ? reading.text : '';
  return {
    ...series,
    point_m: undefined,
    reading: undefined,
    surface: 'dry',
    // A row of dry places is read in one go; once there are enough the next reading is an ordinary one.
    dry: series.dry && !enough,
    kept: [...series.kept, { entry, point_m, text, dry: series.dry }],
  };
};

/** One step back: the place is open again, with nothing typed. */
export const wasUndone = (series: Series): Series => {
  const last = series.kept.at(-1);
  return last ? { ...series, point_m: last.point_m, reading: undefined, dry: last.dry, kept: series.kept.slice(0, -1) } : series;
};

/** Common practice: one place is read a second time in every ten, so that it is known how far two readings of it lie apart. */
export const REPEAT_EVERY = 10;

/** The place to read a second time; undefined while none is due. */
export const repeatDue = (kept: readonly Kept[]): Kept | undefined => {
  const repeated = kept.findLastIndex((k, i) => kept.slice(0, i).some((before) => samePoint(before.point_m, k.point_m)));
  return kept.length - 1 - repeated >= REPEAT_EVERY ? kept.slice(repeated + 1)[0] : undefined;
};

/** Of the places that are read again, those that are still to be read in this series. */
export const leftOf = (again: readonly ToRead[], kept: readonly Kept[]): readonly ToRead[] => again.filter((a) => !kept.some((k) => samePoint(k.point_m, a.point_m)));
