import type { RoundStep } from '../../session/session';

const HEIGHT = 26;
const BASE = 24;
const SOUND = 11;
const FINDING = 22;
const WIDTH = 1000;

/** One stitch a stop in walking order: short is sound, tall a finding, a dot not seen, bare line still to come, the block is here. */
export const StitchLine = ({ steps, at }: { readonly steps: readonly RoundStep[]; readonly at: number }) => {
  const gap = WIDTH / Math.max(1, steps.length);
  const thick = Math.min(16, gap * 0.55);
  const done = steps.filter((s) => s.answered !== 'no').length;
  return (
    <svg
      className="stitch-line"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      preserveAspectRatio="none"
      role="img"
      aria-label={`${done} of ${steps.length} stops answered, ${steps.filter((s) => s.answered === 'not-seen').length} of them not seen`}
    >
      <path d={`M0 ${BASE}H${WIDTH}`} stroke="currentColor" strokeWidth="2" vectorEffect="non-scaling-stroke" />
      {steps.map((s, i) => {
        const x = (i + 0.5) * gap;
        const key = `${s.station} ${s.side}`;
        if (i === at)
          return (
            <rect
              key={key}
              className="here"
              x={x - thick}
              y={1}
              width={thick * 2}
              height={BASE}
              fill="var(--marker)"
              stroke="currentColor"
              strokeWidth="3"
              vectorEffect="non-scaling-stroke"
            />
          );
        if (s.answered === 'no') return null;
        if (s.answered === 'not-seen') return <rect key={key} x={x - thick / 2} y={BASE - 7} width={thick} height={4} fill="currentColor" />;
        const h = s.answered === 'finding' ? FINDING : SOUND;
        return <rect key={key} x={x - thick / 2} y={BASE - h} width={thick} height={h} fill="currentColor" />;
      })}
    </svg>
  );
};
