import { type FormEvent, useMemo, useState } from 'react';
import { addStation, type Part, parts } from '../../../src/rig';
import type { FaceId, FacePoint, Station } from '../../../src/terms';
import { fromSi, type Refusal, readQuantity, showIn, usualUnit } from '../../../src/units';
import { go } from '../shared/route';
import { useDesk } from './desk';
import { desk } from './paths';
import { UnitChoice } from './worksheet-input';

const partWords = (p: Part, unit: 'in' | 'cm'): string =>
  p.w_m > 0 && p.h_m > 0 ? `${p.noun}, ${showIn(p.w_m, 'length', unit).replace(/ \D+$/, '')} × ${showIn(p.h_m, 'length', unit)}` : p.noun;

/** Adds a part of the parts table at a point of a face. Its typical size stands until somebody has measured it. */
export const AddPart = ({
  face,
  at,
  onFace,
  onShown,
  onDone,
}: {
  readonly face: FaceId;
  readonly at: FacePoint | undefined;
  readonly onFace: (face: FaceId) => void;
  readonly onShown: (station: Station | undefined) => void;
  readonly onDone: () => void;
}) => {
  const { id, overview, preferences, keep } = useDesk();
  const { rig } = overview;
  const usual = usualUnit('length', preferences);
  const [unit, setUnit] = useState(usual === 'ft' ? 'in' : usual);
  const [search, setSearch] = useState('');
  const [part, setPart] = useState('');
  const middle = useMemo(() => middleOf(rig.faces.find((f) => f.id === face)?.outline_m ?? []), [rig, face]);
  const text = (m: number): string => String(Number(fromSi(m, 'length', unit).toFixed(unit === 'm' ? 2 : 0)));
  const [texts, setTexts] = useState({ x: text((at ?? middle)[0]), y: text((at ?? middle)[1]) });
  const [refusals, setRefusals] = useState<readonly Refusal[]>([]);

  const wanted = search.trim().toLowerCase();
  const fits = parts.filter((p) => p.id === part || wanted === '' || `${p.noun} ${p.id} ${p.group}`.toLowerCase().replaceAll('-', ' ').includes(wanted));
  const on = rig.faces.find((f) => f.id === face);

  const made = (): Station | undefined => {
    const x = readQuantity(texts.x, 'length', unit, { least: -30, most: 30 }, 'x');
    const y = readQuantity(texts.y, 'length', unit, { least: -30, most: 30 }, 'y');
    const bad = [...(x.ok ? [] : x.refusals), ...(y.ok ? [] : y.refusals)];
    if (part === '') bad.push({ code: 'missing', path: 'part', expected: 'a part', received: 'nothing', sentence: 'Choose a part from the list.' });
    if (bad.length > 0 || !x.ok || !y.ok) {
      setRefusals(bad);
      return undefined;
    }
    const station = addStation(rig, part, face, [x.value.si, y.value.si]);
    setRefusals(station.ok ? [] : station.refusals);
    return station.ok ? station.value : undefined;
  };

  const save = async (event: FormEvent) => {
    event.preventDefault();
    const station = made();
    if (!station) return;
    const kept = await keep([{ kind: 'station-added', place: { at: 'rig' }, body: { station } }], `${station.name} was added, its size typical until you measure it.`);
    if (!kept) return;
    onShown(undefined);
    onDone();
    go(desk.describe(id, station.id));
  };

  const wrong = (path: string): readonly Refusal[] => refusals.filter((r) => r.path === path);
  const said = (path: string) =>
    wrong(path).map((r) => (
      <p key={r.code} className="refusal">
        {r.sentence}
      </p>
    ));

  return (
    <form onSubmit={save} noValidate>
      <h2 className="group-head">Which part</h2>
      <div className="field-row">
        <label htmlFor="part-search">Narrow the list</label>
        <input id="part-search" type="search" value={search} placeholder="window" onChange={(e) => setSearch(e.target.value)} />
      </div>
      <div className="field-row">
        <label htmlFor="part">Part</label>
        <select id="part" value={part} aria-invalid={wrong('part').length > 0} onChange={(e) => setPart(e.target.value)}>
          <option value="">Choose one of {fits.length}</option>
          {fits.map((p) => (
            <option key={p.id} value={p.id}>
              {partWords(p, usual === 'ft' || usual === 'in' ? 'in' : 'cm')}
            </option>
          ))}
        </select>
        {said('part')}
      </div>
      <h2 className="group-head">Where its middle is</h2>
      <div className="field-row">
        <label htmlFor="part-face">Face</label>
        <select
          id="part-face"
          value={face}
          onChange={(e) => {
            const next = middleOf(rig.faces.find((f) => f.id === e.target.value)?.outline_m ?? []);
            onFace(e.target.value);
            setTexts({ x: text(next[0]), y: text(next[1]) });
          }}
        >
          {rig.faces.map((f) => (
            <option key={f.id} value={f.id}>
              {f.name}
            </option>
          ))}
        </select>
        {said('face')}
      </div>
      {(['x', 'y'] as const).map((axis) => (
        <div key={axis} className="input-row">
          <label htmlFor={`part-${axis}`}>
            {axis === 'x' ? 'Along' : 'Up or across'} <span className="mut small">{axis === 'x' ? on?.x_axis : on?.y_axis}</span>
          </label>
          <span className="input-with-unit">
            <input
              id={`part-${axis}`}
              type="text"
              inputMode="decimal"
              autoComplete="off"
              aria-invalid={wrong(axis).length > 0}
              value={texts[axis]}
              onChange={(e) => setTexts({ ...texts, [axis]: e.target.value })}
            />
            {axis === 'x' ? <UnitChoice quantity="length" label="both figures" unit={unit} onChange={setUnit} /> : <span className="unit fixed">{unit}</span>}
          </span>
          {said(axis)}
        </div>
      ))}
      {refusals
        .filter((r) => !['part', 'face', 'x', 'y'].includes(r.path))
        .map((r) => (
          <p key={r.code} className="refusal" role="alert">
            {r.sentence}
          </p>
        ))}
      <p className="mut small">Sizes of parts are typical: measure yours. It can be moved and measured once it is there.</p>
      <p className="buttons">
        <button type="submit" className="button primary">
          Add it
        </button>
        <button type="button" className="button" onClick={() => onShown(made())}>
          Show it first
        </button>
        <button
          type="button"
          className="button"
          onClick={() => {
            onShown(undefined);
            onDone();
          }}
        >
          Leave it
        </button>
      </p>
    </form>
  );
};

const middleOf = (outline: readonly FacePoint[]): FacePoint => {
  if (outline.length === 0) return [0, 0];
  const xs = outline.map((p) => p[0]);
  const ys = outline.map((p) => p[1]);
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
};
