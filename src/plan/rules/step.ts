import type { Standing } from '../../logbook';
import { showDay, showTyped, type Typed } from '../../units';
import { defineRule, type Scene, type Verdict } from '../rule';
import { sourceOf } from '../trade';
import { rulingOn } from './rulings';
import { defectVerdict, unnamed } from './trade-defect';

type Body = { readonly verdict?: string; readonly defects?: readonly string[]; readonly rust_share?: Typed };

/** Paint is a matter of the same row as rust: touched in before it rusts. */
const PAINT: Readonly<Record<string, string>> = { 'step.paint-worn': 'Step paint worn', 'step.paint-chipped': 'Step paint chipped' };

const RUST_AREA = sourceOf('RUSTGRD', 'a coating with more than a fifth of its area broken or rusted is called poor');
/** From here a coating is poor. [1] */
const POOR = 0.2;

const judge = (seen: Standing, _scene: Scene): readonly Verdict[] => {
  const body = seen.body as Body;
  if (body.verdict === 'sound') return [];
  const told = (body.defects ?? []).flatMap((id): readonly Verdict[] => {
    const paint = PAINT[id];
    if (paint !== undefined) {
      const row = defectVerdict('step.rust', seen);
      return row
        ? [
            {
              ...row,
              key: id,
              title: paint,
              because: row.because.map((b) => ({
                ...b,
                text: `Seen on ${showDay(seen.day)}: ${paint.charAt(0).toLowerCase()}${paint.slice(1)}. Bare metal rusts: touch it in now.`,
              })),
            },
          ]
        : [];
    }
    const row = defectVerdict(id, seen);
    if (!row) return [];
    if (id !== 'step.rust') return [row];
    const { rust_share } = body;
    if (rust_share === undefined) return [{ ...row, title: 'Rust on the step' }];
    const poor = rust_share.si > POOR;
    return [
      {
        ...row,
        title: 'Rust on the step',
        because: [
          ...row.because,
          {
            text: `Rust on ${showTyped(rust_share, 'share')} of it${poor ? ': poor. Look at every weld and tap for flakes before anyone stands on it' : ''}.`,
            entries: [seen.entry.id],
            source: RUST_AREA,
          },
        ],
      },
    ];
  });
  return told.length > 0 || body.verdict !== 'something-wrong' ? told : [unnamed(seen)];
};

export const stepRule = defineRule({
  id: 'step',
  title: 'Entry step',
  says: 'A step that moves or does not lock may drop someone: do not use. Rust, worn or chipped paint and stiff pivots are settled this season.',
  sources: [RUST_AREA],
  reads: ['step-condition'],
  example: { kind: 'step-condition', body: { verdict: 'something-wrong', defects: ['step.loose'] }, looks: 'step', gives: 'do-not-use' },
  judge,
  closes: (seen) => (seen.body as Body).verdict === 'sound',
  settles: (care, { key }) => rulingOn(key)?.settledBy?.includes(care.entry.kind) ?? true,
});
