import type { Standing } from '../../logbook';
import type { Because } from '../finding';
import { MOST_SUSPECTS } from '../suspects';
import { dueOf } from '../water/due';
import type { LeakTrace } from '../water/leak';
import { isStructural, summary, worstOf } from '../water/leak-words';
import { LEAK_PATHS, LEAK_STOPPED } from '../water/sources';
import { defineWaterRule, type Raised } from '../water/water-rule';
import { REPAIRS } from './repairs';

const stepsOf = ({ leak }: LeakTrace, name: (id: string) => string): readonly string[] | undefined => {
  if (leak.stop.state === 'repaired') return dueOf(leak.due, 'stop').map((d) => d.words);
  if (leak.confirmed !== undefined)
    return [`Close ${name(leak.confirmed)}: a water test let water in there.`, 'Then hose it again, and meter after 24 to 48 hours and after the next two rains.'];
  const test = leak.next_test;
  return test ? [...test.steps] : undefined;
};

/** Readings that showed it before it was repaired, and whatever showed since that it came in again. */
const seenOf = ({ wet, repairs, stop }: LeakTrace): readonly Standing[] => {
  const [first] = repairs;
  const before = first ? wet.filter((s) => s.day <= first.day && !stop.again.includes(s)) : wet;
  return [...(before.length > 0 ? before : wet.slice(0, 1)), ...stop.again];
};

const raise = (trace: LeakTrace, name: (id: string) => string): readonly Raised[] => {
  const { leak, stop, repairs, dryBy, wet } = trace;
  if (!trace.metered || trace.explained) return [];
  const worst = worstOf(trace);
  const who = isStructural(worst) ? 'professional' : 'yourself';
  const entries = [...new Set(wet.map((s) => s.entry.id))].slice(0, 12);
  const because: readonly Because[] = [
    summary(trace),
    { text: leak.sentence, entries, source: LEAK_PATHS },
    ...(leak.apart === undefined ? [] : [{ text: leak.apart, entries, source: LEAK_PATHS }]),
    ...leak.stop.because,
  ];
  const care = repairs.at(-1);
  const next = dueOf(leak.due, 'stop')[0];
  // Dry twice, a week apart, and nobody mended anything: whatever it was, it is not coming in.
  const closed = stop.by ? { by: stop.by, life: 'proved' as const, ...(care ? { care } : {}) } : !care && dryBy ? { by: dryBy, life: 'seen-sound' as const } : undefined;
  const steps = stepsOf(trace, name);
  return [
    {
      place: leak.place,
      seen: seenOf(trace),
      since: leak.since,
      ...(closed ? { closed } : {}),
      mended: repairs,
      verdict: {
        key: '',
        title: 'Water comes in',
        urgency: 'before-rain',
        who,
        because,
        remedies: ['wet-inside'],
        cautions: ['ladder', 'mould', 'mains'],
        suspects: (leak.confirmed !== undefined ? [leak.confirmed] : leak.candidates.map((c) => c.station)).slice(0, MOST_SUSPECTS),
        leak: leak.id,
        ...(!closed && steps && steps.length > 0 ? { steps } : {}),
        ...(next && care
          ? {
              proof: {
                due: next.from,
                text: `Two real rains without a rise against the dry places, or the hose again, show whether it holds. Next: ${next.words.charAt(0).toLowerCase()}${next.words.slice(1)}`,
              },
            }
          : {}),
      },
    },
  ];
};

export const waterComingInRule = defineWaterRule({
  id: 'water-coming-in',
  title: 'Water comes in',
  says: 'A place that is wetter than the dry places of its wall and the air explain: the way in is found before rain. Stopped after two real rains or a repeated hose test without a rise; open again by itself after a rise of more than 3 points.',
  sources: [LEAK_PATHS, LEAK_STOPPED],
  reads: ['wood-moisture-pin', 'wood-moisture-pinless', 'moisture-relative'],
  formerly: ['moisture-pin'],
  raises: ({ traces, rig }) => traces.flatMap((t) => raise(t, (id) => rig.stations.find((s) => s.id === id)?.name ?? id)),
  settles: (care) => REPAIRS.has(care.entry.kind),
});
