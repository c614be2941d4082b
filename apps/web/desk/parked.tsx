import { fromSi, lastDay, parseWhen, showDay, sortInstant, type Typed } from '../../../src/units';
import { useDesk } from './desk';
import { type LogLine, useEveryLine } from './logbook-lines';
import { desk } from './paths';
import { optionWord } from './words';

type Stay = { readonly place_name?: string; readonly heading?: Typed; readonly cover?: string };

/** The stay that still holds on a day: the last one, unless the rig was moved after it. */
const stayOn = (lines: readonly LogLine[], on: number): LogLine | undefined => {
  const moves = lines
    .flatMap((line) => {
      const when = parseWhen(line.entry.observed_at);
      const fits = !line.withdrawn && (line.entry.kind === 'stay' || line.entry.kind === 'leg') && when !== undefined;
      const began = when?.form === 'span' ? when.from : when && lastDay(when);
      return fits && began !== undefined && began <= on ? [{ line, at: sortInstant(when) }] : [];
    })
    .toSorted((a, b) => a.at - b.at);
  const last = moves.at(-1)?.line;
  return last?.entry.kind === 'stay' ? last : undefined;
};

/** Where the rig stands and which way its nose points, if a stay says so. On the sheet the nose is to the left. */
export const Parked = ({ on }: { readonly on: number }) => {
  const { id } = useDesk();
  const lines = useEveryLine();
  const stay = lines && stayOn(lines, on);
  if (!stay) return null;
  const body = stay.body as Stay;
  const when = parseWhen(stay.entry.observed_at);
  const since = when?.form === 'span' ? when.from : when?.day;
  const heading = body.heading === undefined ? undefined : Math.round(fromSi(body.heading.si, 'angle', 'deg'));
  const words = [
    heading === undefined ? 'Parked' : `Parked nose to ${heading}°`,
    body.place_name === undefined ? '' : `at ${body.place_name}`,
    since === undefined ? '' : `since ${showDay(since, true)}`,
  ].filter((w) => w !== '');
  const cover = body.cover === undefined ? '' : `, ${optionWord('stay', 'cover', body.cover).toLowerCase()}`;
  return (
    <p className="parked">
      {heading !== undefined && <Compass heading={heading} />}
      <span>
        {words.join(' ')}
        {cover}. <a href={desk.add(id, { kind: 'stay' })}>Parked elsewhere</a>
      </span>
    </p>
  );
};

const POINTS = [
  ['N', 0],
  ['E', 90],
  ['S', 180],
  ['W', 270],
] as const;

/** A compass laid over the sheet: the rig lies with its nose to the left, so left is its heading. */
const Compass = ({ heading }: { readonly heading: number }) => (
  <svg className="compass" viewBox="-34 -34 68 68" width="68" height="68" aria-hidden="true" focusable="false">
    <circle r="21" />
    {POINTS.map(([word, bearing]) => {
      const turn = ((bearing - heading - 90) * Math.PI) / 180;
      const [x, y] = [Math.sin(turn), -Math.cos(turn)];
      return (
        <g key={word}>
          <path d={`M${x * 18} ${y * 18}L${x * 23} ${y * 23}`} />
          <text x={x * 29} y={y * 29 + 3.5} fontWeight={word === 'N' ? 700 : 400}>
            {word}
          </text>
        </g>
      );
    })}
    <rect x="-11" y="-4" width="22" height="8" />
    <path d="M-11 0H-18" />
  </svg>
);
