import type { Standing } from '../../logbook';
import type { Because } from '../finding';
import { DEW_POINT, DRY_REFERENCE, EQUILIBRIUM } from '../water/sources';
import type { WaterJudged } from '../water/water';
import { defineWaterRule, type Raised, type WaterRule } from '../water/water-rule';
import type { SpotState } from '../water/water-types';

/**
 * Panels that read high without a leak, told so that nobody looks for one: from the first reading that showed it to the first day on which
 * none of the panel's readings does.
 */
const raisedFor = (judged: WaterJudged, why: SpotState, title: string, then: string): readonly Raised[] => {
  const standings = new Map(judged.record.ofAll(['wood-moisture-pin', 'wood-moisture-pinless', 'moisture-relative']).map((s) => [s.entry.id, s]));
  const panels = [...new Set(judged.places.map((m) => m.panel))].sort();
  return panels.flatMap((panel): readonly Raised[] => {
    const all = judged.places.filter((m) => m.panel === panel).flatMap((m) => m.weighed);
    const weighed = all.flatMap((w) => {
      const standing = standings.get(w.reading.entry);
      return standing && w.state !== 'not-known' ? [{ w, standing }] : [];
    });
    const days = [...new Set(weighed.map((x) => x.w.reading.day))].sort((a, b) => a - b);
    const raised: Raised[] = [];
    let open: { seen: Standing[]; because: readonly Because[] } | undefined;
    const close = (by: Standing | undefined): void => {
      const first = open?.seen[0];
      if (!open || !first) return;
      raised.push({
        place: first.place,
        seen: open.seen,
        since: first.day,
        ...(by ? { closed: { by, life: 'seen-sound' as const } } : {}),
        verdict: {
          key: '',
          title,
          urgency: 'watch',
          who: 'yourself',
          because: [...open.because, { text: then, entries: [first.entry.id], source: why === 'weather' ? DRY_REFERENCE : DEW_POINT }],
          remedies: [],
          cautions: [],
        },
      });
      open = undefined;
    };
    for (const day of days) {
      const that = weighed.filter((x) => x.w.reading.day === day);
      const showing = that.filter((x) => x.w.state === why);
      const [one] = showing;
      if (one) open = { seen: [...(open?.seen ?? []), ...showing.map((x) => x.standing)], because: one.w.beside };
      else close(that[0]?.standing);
    }
    close(undefined);
    return raised;
  });
};

export const weatherNotLeakRule: WaterRule = defineWaterRule({
  id: 'weather-not-leak',
  title: 'Damp as its air',
  says: 'High readings that the dry places share, or that the air the rig has lived in explains: the weather, watched, and no leak is named.',
  sources: [EQUILIBRIUM, DRY_REFERENCE],
  reads: ['wood-moisture-pin', 'wood-moisture-pinless', 'moisture-relative'],
  raises: (judged) => raisedFor(judged, 'weather', 'Damp as its air', 'Air it out, and read again with dry places beside it when the air has been drier for some weeks.'),
});

export const condensationRule: WaterRule = defineWaterRule({
  id: 'condensation',
  title: 'Wet by condensation',
  says: 'A surface colder than the dew point of its air is wet without a leak: watched, aired and read again warm before a leak is named.',
  sources: [DEW_POINT],
  reads: ['wood-moisture-pin', 'wood-moisture-pinless', 'moisture-relative'],
  raises: (judged) => raisedFor(judged, 'condensation', 'Wet by condensation', 'Air and warm it, wipe it dry, and read again when the surface is warmer than the dew point.'),
});
