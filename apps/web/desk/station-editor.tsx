import { type FormEvent, useEffect, useState } from 'react';
import { box, moveStation, renameStation, resizeStation } from '../../../src/rig';
import type { Shape, Station } from '../../../src/terms';
import { fromSi, type Refusal, readQuantity, usualUnit } from '../../../src/units';
import { DescriptionForm } from './description-form';
import { useDesk } from './desk';
import { desk } from './paths';
import { UnitChoice } from './worksheet-input';

/** Everything about one station that can be put right: name, place and size, what seals it, whether it is there at all. */
export const StationEditor = ({
  station,
  moved,
  onMoved,
}: {
  readonly station: Station;
  readonly moved: Shape | undefined;
  readonly onMoved: (shape: Shape | undefined) => void;
}) => {
  const { id } = useDesk();
  return (
    <>
      <PlaceForm station={station} moved={moved} onMoved={onMoved} />
      <NameForm station={station} />
      <SealForm station={station} />
      <Retire station={station} />
      <p className="mut small">
        <a href={desk.place(id, station.id)}>Everything known about it</a>
      </p>
    </>
  );
};

type Axis = 'x' | 'y' | 'w' | 'h';
type Texts = Readonly<Record<Axis, string>>;

const textsOf = (shape: Shape, unit: string): Texts => {
  const b = box(shape);
  const t = (m: number): string => String(Number(fromSi(m, 'length', unit).toFixed(unit === 'mm' ? 0 : unit === 'cm' || unit === 'in' ? 1 : 3)));
  return { x: t(b.x0), y: t(b.y0), w: t(b.x1 - b.x0), h: t(b.y1 - b.y0) };
};

const PlaceForm = ({ station, moved, onMoved }: { readonly station: Station; readonly moved: Shape | undefined; readonly onMoved: (shape: Shape | undefined) => void }) => {
  const { overview, preferences, keep } = useDesk();
  const { rig } = overview;
  const usual = usualUnit('length', preferences);
  const [unit, setUnit] = useState(usual === 'ft' ? 'in' : usual);
  const shape = moved ?? station.shape;
  const [texts, setTexts] = useState<Texts>(() => textsOf(shape, unit));
  const [measured, setMeasured] = useState(station.size === 'confirmed');
  const [refusals, setRefusals] = useState<readonly Refusal[]>([]);
  const face = rig.faces.find((f) => f.id === station.face);
  const sized = shape.form === 'rect' || shape.form === 'circle';

  // The drawing has moved it: the figures follow.
  useEffect(() => {
    setTexts(textsOf(moved ?? station.shape, unit));
    setRefusals([]);
  }, [moved, station.shape, unit]);

  const read = (axis: Axis): number | undefined => {
    const r = readQuantity(texts[axis], 'length', unit, axis === 'w' || axis === 'h' ? { least: 0.005, most: 30 } : { least: -30, most: 30 }, axis);
    if (r.ok) return r.value.si;
    setRefusals((old) => [...old.filter((o) => o.path !== axis), ...r.refusals]);
    return undefined;
  };

  const save = async (event: FormEvent) => {
    event.preventDefault();
    setRefusals([]);
    const [x, y] = [read('x'), read('y')];
    const [w, h] = sized ? [read('w'), read('h')] : [0, 0];
    if (x === undefined || y === undefined || w === undefined || h === undefined) return;
    // A figure that was not touched keeps what stands there to the millimetre.
    const old = textsOf(shape, unit);
    const b = box(shape);
    const [nx, ny] = [texts.x === old.x ? b.x0 : x, texts.y === old.y ? b.y0 : y];
    const [nw, nh] = [texts.w === old.w ? b.x1 - b.x0 : w, texts.h === old.h ? b.y1 - b.y0 : h];
    const resized = sized && (texts.w !== old.w || texts.h !== old.h);
    const sizedFirst = resized ? resizeStation(rig, station.id, nw, nh) : undefined;
    // A new size is tried together with the new place: either alone may not fit.
    const grown = sizedFirst?.ok ? sizedFirst.value.shape : sized && resized ? { ...station.shape, w_m: nw, h_m: nh } : station.shape;
    const trial = { ...rig, stations: rig.stations.map((s) => (s.id === station.id ? { ...s, shape: grown as Shape } : s)) };
    const placed = moveStation(trial, station.id, [nx, ny]);
    const wrong = [
      ...(sizedFirst && !sizedFirst.ok ? sizedFirst.refusals.filter((r) => r.code === 'size-outside' || r.code === 'no-size') : []),
      ...(placed.ok ? [] : placed.refusals),
    ];
    if (wrong.length > 0 || !placed.ok) {
      setRefusals(wrong.map((r) => ({ ...r, path: { w_m: 'w', h_m: 'h' }[r.path] ?? r.path })));
      return;
    }
    const size = measured || resized ? 'confirmed' : 'typical';
    const kept = await keep(
      [{ kind: 'station-moved', place: { at: 'station', station: station.id, side: 'outside' }, body: { shape: placed.value.shape, size } }],
      `${station.name} was placed.`,
    );
    if (kept) onMoved(undefined);
  };

  const words: readonly (readonly [Axis, string, string])[] = [
    ['x', 'Along', face?.x_axis ?? ''],
    ['y', 'Up or across', face?.y_axis ?? ''],
    ...(sized ? ([['w', 'Wide', 'along the first figure'] as const, ['h', 'High', 'along the second figure'] as const] as const) : []),
  ];
  const changed = moved !== undefined || JSON.stringify(texts) !== JSON.stringify(textsOf(station.shape, unit)) || measured !== (station.size === 'confirmed');
  return (
    <form onSubmit={save} noValidate>
      <h2 className="group-head">
        Where it is <span className="mut">{station.size === 'typical' ? 'typical, measure yours' : 'measured'}</span>
      </h2>
      {words.map(([axis, word, meaning]) => {
        const wrong = refusals.filter((r) => r.path === axis);
        return (
          <div key={axis} className="input-row">
            <label htmlFor={`place-${axis}`}>
              {word} <span className="mut small">{meaning}</span>
            </label>
            <span className="input-with-unit">
              <input
                id={`place-${axis}`}
                type="text"
                inputMode="decimal"
                autoComplete="off"
                aria-invalid={wrong.length > 0}
                value={texts[axis]}
                onChange={(e) => setTexts({ ...texts, [axis]: e.target.value })}
              />
              {axis === 'x' ? <UnitChoice quantity="length" label="all figures" unit={unit} onChange={setUnit} /> : <span className="unit fixed">{unit}</span>}
            </span>
            {wrong.map((r) => (
              <p key={r.code} className="refusal">
                {r.sentence}
              </p>
            ))}
          </div>
        );
      })}
      <label className="option">
        <input type="checkbox" checked={measured} onChange={(e) => setMeasured(e.target.checked)} />
        <span>
          <b>I measured this</b>
        </span>
      </label>
      {refusals
        .filter((r) => !words.some(([axis]) => axis === r.path))
        .map((r) => (
          <p key={r.code} className="refusal" role="alert">
            {r.sentence}
          </p>
        ))}
      <p className="buttons">
        <button type="submit" className="button primary" disabled={!changed}>
          Keep this place
        </button>
        {moved && (
          <button type="button" className="button" onClick={() => onMoved(undefined)}>
            Put it back
          </button>
        )}
      </p>
    </form>
  );
};

const NameForm = ({ station }: { readonly station: Station }) => {
  const { overview, keep } = useDesk();
  const [name, setName] = useState(station.name);
  const renamed = renameStation(overview.rig, station.id, name);
  const wrong = !renamed.ok;
  const save = (event: FormEvent) => {
    event.preventDefault();
    if (renamed.ok && renamed.value.name !== station.name)
      void keep(
        [{ kind: 'station-renamed', place: { at: 'station', station: station.id, side: 'outside' }, body: { name: renamed.value.name } }],
        `It is called ${renamed.value.name} from now on.`,
      );
  };
  return (
    <form onSubmit={save} noValidate>
      <h2 className="group-head">What it is called</h2>
      <div className="field-row one-line">
        <label htmlFor="station-name" className="unseen">
          Name
        </label>
        <input id="station-name" type="text" maxLength={120} value={name} aria-invalid={wrong} onChange={(e) => setName(e.target.value)} />
        <button type="submit" className="button" disabled={wrong || name.trim() === station.name}>
          Rename
        </button>
      </div>
      {!renamed.ok && <p className="refusal">{renamed.refusals.map((r) => r.sentence).join(' ')}</p>}
    </form>
  );
};

const known = (v: string): string | undefined => (v === 'unknown' ? undefined : v);

const SealForm = ({ station }: { readonly station: Station }) => {
  const { overview } = useDesk();
  const bare = (station.bead === 'none' || station.bead === 'none-gasket') && station.sealed_with === 'unknown';
  return (
    <section className="seal-form">
      <h2 className="group-head">{bare ? 'What lies behind' : 'What seals it, and what lies behind'}</h2>
      <DescriptionForm
        key={overview.entries}
        kindId="station-facts"
        {...(bare ? { hidden: ['sealed_with', 'sealed_to', 'last_sealed'] } : {})}
        place={{ at: 'station', station: station.id, side: 'outside' }}
        stands={{
          sealed_with: station.sealed_with,
          sealed_to: station.sealed_to,
          ...(known(station.last_sealed) === undefined ? {} : { last_sealed: station.last_sealed }),
          ...(station.behind === '' ? {} : { behind: station.behind }),
        }}
        words="Keep what is known"
        said="What is known about it was written down."
      />
    </section>
  );
};

const Retire = ({ station }: { readonly station: Station }) => {
  const { keep } = useDesk();
  const [asking, setAsking] = useState(false);
  const [why, setWhy] = useState('');
  if (station.retired) return <p className="mut">It is retired: no round visits it. Withdraw the entry in the logbook to bring it back.</p>;
  if (!asking)
    return (
      <p className="buttons">
        <button type="button" className="button" onClick={() => setAsking(true)}>
          Retire it
        </button>
      </p>
    );
  return (
    <div className="doubt">
      <p>No round will visit {station.name.toLowerCase()} any more. Its history stays.</p>
      <div className="field-row">
        <label htmlFor="retire-why">
          Why <span className="mut">if it helps</span>
        </label>
        <input id="retire-why" type="text" maxLength={300} value={why} onChange={(e) => setWhy(e.target.value)} />
      </div>
      <p className="buttons">
        <button
          type="button"
          className="button primary"
          onClick={() =>
            void keep(
              [{ kind: 'station-retired', place: { at: 'station', station: station.id, side: 'outside' }, body: why.trim() === '' ? {} : { why: why.trim() } }],
              `${station.name} was retired.`,
            )
          }
        >
          Yes, retire it
        </button>
        <button type="button" className="button" onClick={() => setAsking(false)}>
          No
        </button>
      </p>
    </div>
  );
};
