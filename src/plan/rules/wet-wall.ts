import type { Urgency, Who } from '../../terms';
import type { CivilDay } from '../../units';
import { suspectsAt } from '../suspects';
import { dueOf } from '../water/due';
import type { LeakTrace } from '../water/leak';
import { isBondedWall, standsOut } from '../water/leak';
import { isStructural, wettest, worstOf } from '../water/leak-words';
import { TREND_DRY } from '../water/sources';
import { drySince } from '../water/trend';
import type { WaterJudged } from '../water/water';
import { defineWaterRule, type Raised } from '../water/water-rule';
import type { Weighed } from '../water/yardsticks';
import { MOISTURE_BANDS } from './sources';

/** What the trade calls it, by pin meter in wood; the band's id. */
const TITLES: Readonly<Record<string, string>> = { note: 'Wood a little damp', early: 'Wood damp', evident: 'Wood wet', structural: 'Wood wet through' };

/** A part that was taken out, or work by the trade; a new bead outside dries nothing. */
const DRIES: ReadonlySet<string> = new Set(['replaced', 'professional-work']);

const titleOf = (worst: Weighed | undefined): string => {
  const band = worst?.yardsticks.bands?.trade;
  const byBand = band === undefined ? undefined : TITLES[band];
  return byBand ?? (worst?.state === 'damp' ? 'Damper than the dry places' : 'Wetter than the dry places');
};

type How = { readonly urgency: Urgency; readonly who: Who; readonly remedies: readonly string[] };

/** Before the way in is closed it waits for no rain; afterwards it dries, and is read again. */
const howOf = ({ leak, stop, explained }: LeakTrace, worst: Weighed | undefined, on: CivilDay, bonded: boolean): How => {
  const structural = isStructural(worst);
  const band = worst?.yardsticks.bands?.trade;
  if (leak.stop.state === 'stopped' || leak.stop.state === 'repaired') {
    const due = dueOf(leak.due, 'dryness')[0];
    const urgency: Urgency = structural || bonded || (due !== undefined && on >= due.from) ? 'this-season' : 'watch';
    return { urgency, who: structural || (bonded && stop.state === 'stopped') ? 'professional' : 'yourself', remedies: structural ? ['soft-structure'] : [] };
  }
  const remedies = structural ? ['soft-structure', 'wet-inside'] : ['wet-inside'];
  const dryNow = worst?.state === 'dry' || worst?.state === 'weather';
  if (dryNow) return { urgency: 'watch', who: 'yourself', remedies: [] };
  return { urgency: band === 'note' || band === 'none' ? (explained ? 'watch' : 'this-season') : 'before-rain', who: structural ? 'professional' : 'yourself', remedies };
};

/** How urgent one reading was by itself: what a decision was made about. */
const urgencyAt = (w: Weighed | undefined): Urgency => {
  const band = w?.yardsticks.bands?.trade;
  return band === undefined ? 'before-rain' : band === 'none' ? 'watch' : band === 'note' ? 'this-season' : 'before-rain';
};

const ofLeak = (trace: LeakTrace, { rig, on }: WaterJudged): readonly Raised[] => {
  if (!trace.metered) return [];
  const { leak, dryBy } = trace;
  const worst = worstOf(trace);
  const bonded = isBondedWall(rig, leak.spots);
  const how = howOf(trace, worst, on, bonded);
  const next = dueOf(leak.due, 'dryness')[0];
  const drying = leak.stop.state === 'stopped' || leak.stop.state === 'repaired';
  const care = trace.repairs.at(-1);
  const seen = trace.wet.filter((s) => trace.weighed.has(s.entry.id));
  return [
    {
      place: leak.place,
      seen,
      urgencies: seen.map((s) => urgencyAt(trace.weighed.get(s.entry.id))),
      since: leak.since,
      ...(dryBy ? { closed: { by: dryBy, life: care ? ('proved' as const) : ('seen-sound' as const), ...(care ? { care } : {}) } } : {}),
      verdict: {
        key: '',
        title: titleOf(dryBy ? wettest(seen.flatMap((s) => trace.weighed.get(s.entry.id) ?? [])) : worst),
        ...how,
        because: [...(worst?.because ?? []), ...leak.dryness.because, ...(trace.explained ? [trace.explained.because] : [])],
        cautions: ['mould', 'mains'],
        suspects: how.remedies.length > 0 && !trace.explained ? suspectsAt(leak.place, rig) : [],
        leak: leak.id,
        ...(next && drying ? { due: next.from, steps: dueOf(leak.due, 'dryness').map((d) => d.words) } : {}),
      },
    },
  ];
};

/** Damp places that no leak is named for: read again. */
const ofDamp = ({ places, traces, record, rig }: WaterJudged): readonly Raised[] => {
  const inLeak = new Set(traces.flatMap((t) => t.leak.spots.map((s) => s.id)));
  const standings = new Map(record.ofAll(['wood-moisture-pin', 'wood-moisture-pinless', 'moisture-relative']).map((s) => [s.entry.id, s]));
  return places.flatMap((m): readonly Raised[] => {
    if (inLeak.has(m.id)) return [];
    const damp = m.weighed.filter(standsOut);
    const seen = damp.flatMap((w) => standings.get(w.reading.entry) ?? []);
    const [first, last] = [seen[0], damp.at(-1)];
    if (!first || !last) return [];
    const now = m.weighed.findLast((w) => w.state !== 'not-known');
    const dry = drySince(m.weighed);
    const sound = now !== undefined && !standsOut(now) ? now : undefined;
    const by = standings.get(dry?.entry ?? sound?.reading.entry ?? '');
    return [
      {
        place: m.place,
        seen,
        since: first.day,
        ...(by && sound ? { closed: { by, life: 'seen-sound' as const } } : {}),
        verdict: {
          key: '',
          title: titleOf(last),
          urgency: 'watch',
          who: 'yourself',
          because: [
            ...last.because,
            {
              text: `Not enough above its surroundings to name a leak: it is read again, with dry places beside it, at the next round or after the next rain.`,
              entries: [first.entry.id, last.reading.entry].filter((e, i, all) => all.indexOf(e) === i),
              source: TREND_DRY,
            },
          ],
          remedies: [],
          cautions: ['mains'],
          suspects: (last.reading.value ?? 0) >= 0.2 ? suspectsAt(m.place, rig) : [],
        },
      },
    ];
  });
};

export const wetWallRule = defineWaterRule({
  id: 'wet-wall',
  title: 'Wet wall',
  says: 'By pin meter in wood, corrected: from 15 % watched, from 20 % before rain, from 25 % for a professional; by any meter, more than 6 spreads above the dry places. Dry again when within 2 points of the dry places twice, a week apart. Not where the weather or sweat explains it.',
  sources: [MOISTURE_BANDS, TREND_DRY],
  reads: ['wood-moisture-pin', 'wood-moisture-pinless', 'moisture-relative'],
  formerly: ['moisture-pin'],
  raises: (judged) => [...judged.traces.flatMap((t) => ofLeak(t, judged)), ...ofDamp(judged)],
  settles: (care) => DRIES.has(care.entry.kind),
});
