import type { Standing } from '../logbook';
import { byUrgency, type EntryId, type Source } from '../terms';
import { type Typed, toSi } from '../units';
import type { Episode } from './episodes';
import type { Scene } from './rule';
import { type Escalation, escalationsOf, firstSource, sourceOf } from './trade';

/**
 * Raises a defect's urgency where the same station shows what the escalations table names. Conditions that the logbook
 * cannot decide stay words for people, under “worse if”.
 */
export const escalated = (episodes: readonly Episode[], scene: Scene): readonly Episode[] => {
  for (const episode of episodes) {
    if (episode.closed || episode.verdict.defect === undefined) continue;
    for (const escalation of escalationsOf(episode.verdict.defect)) {
      const shown = escalation.if && met(escalation, episodes, scene);
      if (shown === undefined || !raises(escalation, episode)) continue;
      const because = {
        text: `${sentence(escalation.when)}: ${lower(escalation.because)}.`,
        entries: [...new Set([...shown, ...episode.verdict.because.flatMap((b) => b.entries)])],
        source: sourceOfRow(escalation),
      };
      episode.verdict = { ...episode.verdict, urgency: escalation.urgency, who: escalation.who, because: [...episode.verdict.because, because] };
      const last = episode.urgencies.length - 1;
      episode.urgencies[last] = escalation.urgency;
    }
  }
  return episodes;
};

const raises = (escalation: Escalation, episode: Episode): boolean =>
  byUrgency(escalation.urgency, episode.verdict.urgency) < 0 ||
  (escalation.urgency === episode.verdict.urgency && escalation.who === 'professional' && episode.verdict.who === 'yourself');

/** The entries that meet the condition, or undefined. */
const met = (escalation: Escalation, episodes: readonly Episode[], scene: Scene): readonly EntryId[] | undefined => {
  const { defects, gap_over_mm, pin_over_percent, wet_inside } = escalation.if ?? {};
  const beside = episodes.find((e) => !e.closed && e.verdict.defect !== undefined && defects?.includes(e.verdict.defect));
  const found: (Standing | undefined)[] = [
    beside?.seen.at(-1),
    gap_over_mm === undefined ? undefined : over(scene.through('seal-grade').at(-1), 'gap_width', toSi(gap_over_mm, 'small-length', 'mm')),
    pin_over_percent === undefined ? undefined : over(scene.through('wood-moisture-pin').at(-1), 'reading', toSi(pin_over_percent, 'moisture-content', 'percent')),
    wet_inside ? wetInside(scene) : undefined,
  ];
  const shown = found.filter((s): s is Standing => s !== undefined);
  return shown.length === 0 ? undefined : shown.map((s) => s.entry.id);
};

const over = (standing: Standing | undefined, field: string, limit: number): Standing | undefined => {
  const value = (standing?.body as Readonly<Record<string, Typed | undefined>> | undefined)?.[field];
  return standing && value && value.si > limit ? standing : undefined;
};

const wetInside = (scene: Scene): Standing | undefined => {
  const signs = scene.through('inside-signs').at(-1);
  return signs && (signs.body as { verdict?: string }).verdict === 'something-wrong' ? signs : undefined;
};

const sourceOfRow = (escalation: Escalation): Source => (escalation.source === undefined ? firstSource([['CP']]) : sourceOf(escalation.source));

const lower = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
