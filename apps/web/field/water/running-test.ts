import type { Leak, Likelihood, WaterTest } from '../../../../src/plan';
import type { EntryId, RigId, StationId } from '../../../../src/terms';
import { useDraft } from './use-series';

/** How one way in stood before a test, to be held beside how it stands after it. */
export type Stood = { readonly station: StationId; readonly word: Likelihood };

/** A water test from its start to what it showed: a draft, so that it outlives the page and the battery. */
export type Running = {
  readonly leak: EntryId;
  readonly station: StationId;
  readonly how: WaterTest['how'];
  readonly minutes: number;
  /** [ms] */
  readonly started: number;
  /** Whether what lies above stayed dry; undefined while nobody said. */
  readonly kept_dry: boolean | undefined;
  readonly before: readonly Stood[];
  /** Tests of this place when it began. */
  readonly tests: number;
  /** Its entry, once the result is in the logbook. */
  readonly entry?: EntryId;
  readonly result?: string;
};

const readRunning = (saved: unknown): Running | null => {
  const found = saved as Partial<Running> | undefined;
  return typeof found === 'object' && found !== null && typeof found.started === 'number' && typeof found.station === 'string' && typeof found.leak === 'string'
    ? (found as Running)
    : null;
};

/** At most one runs on a rig: water on two places at once tells nothing. */
export const useRunning = (rig: RigId): readonly [Running | null | undefined, (next: Running | null) => void] => useDraft<Running | null>(`${rig}/water-test`, readRunning);

export const stood = (leak: Leak | undefined): readonly Stood[] => (leak?.candidates ?? []).map(({ station, word }) => ({ station, word }));

const SECOND_MS = 1000;
const MINUTE_S = 60;

/** Whole seconds since the start; a clock that was set back counts as none. */
export const elapsed = (running: Pick<Running, 'started'>, now: number): number => Math.max(0, Math.floor((now - running.started) / SECOND_MS));

/** `4:05` */
export const clock = (seconds: number): string => `${Math.floor(seconds / MINUTE_S)}:${String(seconds % MINUTE_S).padStart(2, '0')}`;

/** Longer than this nobody stands at a hose: the clock was left running, and its time says nothing. [s] */
export const LEFT_RUNNING_S = 2 * 3600;

/** Minutes as they are written down, to the tenth; undefined where the clock was left running. */
export const ranFor = (seconds: number): string | undefined => (seconds > LEFT_RUNNING_S ? undefined : (seconds / MINUTE_S).toFixed(1).replace(/\.0$/, ''));

/** A way in, before and after the test. */
export type Changed = { readonly station: StationId; readonly before: Likelihood | undefined; readonly after: Likelihood | undefined };

/** In the order in which they stand now; what has left the list comes last. */
export const changes = (before: readonly Stood[], after: readonly Stood[]): readonly Changed[] => [
  ...after.map((a) => ({ station: a.station, before: before.find((b) => b.station === a.station)?.word, after: a.word })),
  ...before.filter((b) => !after.some((a) => a.station === b.station)).map((b) => ({ station: b.station, before: b.word, after: undefined })),
];
