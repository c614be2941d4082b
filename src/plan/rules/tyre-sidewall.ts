import type { tyreSidewall } from '../../entries';
import type { Standing } from '../../logbook';
import type { BodyOf } from '../../terms';
import { showDay } from '../../units';
import { defineRule, type Scene, type Verdict } from '../rule';
import { PRACTICE, TYRE_CRACK, TYRE_TREAD } from './sources';
import { defectVerdict } from './trade-defect';

type Body = BodyOf<(typeof tyreSidewall)['fields']>;

const DEPTH: Readonly<Record<string, string>> = { fine: 'shallower than 1/32 in', deeper: '1/32 to 2/32 in deep', deepest: 'deeper than 2/32 in' };
const DAMAGE: Readonly<Record<string, string>> = { bulge: 'a bulge', 'cord-showing': 'cord showing', cut: 'a cut' };

const judge = (seen: Standing, _scene: Scene): readonly Verdict[] => {
  const body = seen.body as Body;
  const here = [seen.entry.id];
  const verdicts: Verdict[] = [];
  const broken = (body.damage ?? []).filter((d) => d in DAMAGE).map((d) => DAMAGE[d]);
  if (broken.length > 0)
    verdicts.push({
      key: 'bulge',
      title: 'Tyre bulged, cut or showing cord',
      urgency: 'before-moving',
      who: 'professional',
      because: [{ text: `Seen on ${showDay(seen.day)}: ${broken.join(', ')}. Belt or plies have come apart or are cut: not used again.`, entries: here, source: TYRE_TREAD }],
      defect: 'tyre.bulge',
    });
  if (body.cracks !== 'none')
    verdicts.push({
      key: 'cracks',
      title: 'Tyre sidewall cracks',
      urgency: 'before-moving',
      who: 'professional',
      because: [
        {
          text: `Cracks seen in the sidewall on ${showDay(seen.day)}, ${DEPTH[body.cracks] ?? 'of unknown depth'}. Any crack that shows: not used again until a professional has looked.`,
          entries: here,
          source: PRACTICE,
        },
        {
          text: 'A service manual parts cracks by depth: under 1/32 in, up to 2/32 in, and deeper. That is what the professional will use; it makes nothing less urgent here.',
          entries: here,
          source: TYRE_CRACK,
        },
      ],
      defect: 'tyre.sidewall-crack',
    });
  if (body.damage?.includes('valve')) verdicts.push(...[defectVerdict('tyre.valve', seen)].filter((v) => v !== undefined));
  return verdicts;
};

const BY_TRADE: ReadonlySet<string> = new Set(['tyre-fitted', 'professional-work']);
const STAYS: ReadonlySet<string> = new Set(['bulge', 'cracks']);

export const tyreSidewallRule = defineRule({
  id: 'tyre-sidewall',
  title: 'Sidewall of a tyre',
  says: 'Any visible crack, bulge, cut or cord: not used again until a professional has looked. Depth is shown and lowers nothing.',
  sources: [PRACTICE, TYRE_CRACK, TYRE_TREAD],
  reads: ['tyre-sidewall'],
  example: { kind: 'tyre-sidewall', body: { cracks: 'fine' }, looks: 'tyre', gives: 'before-moving' },
  judge,
  // A crack does not heal: a later look that misses it closes nothing.
  closes: (_seen, key) => !STAYS.has(key),
  settles: (care, { key }) => !STAYS.has(key) || BY_TRADE.has(care.entry.kind),
  endedBy: ['tyre-fitted'],
});
