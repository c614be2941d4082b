import { useId, useState } from 'react';
import { asksAt } from '../../../src/entries';
import type { Rig } from '../../../src/rig';
import type { AnyKind, FacePoint, Place, PlaceForm, Side, Station } from '../../../src/terms';
import { fromSi, type Preferences, readQuantity, usualUnit } from '../../../src/units';
import { stationWords, upperFirst } from './desk';
import { UnitChoice } from './worksheet-input';

/** A place while it is being given: texts as typed, read only at the end. */
export type PlaceAnswer = {
  readonly at: PlaceForm;
  readonly station: string;
  readonly face: string;
  readonly side: Side;
  readonly unit: string;
  /** One corner a line: `x, y`. */
  readonly points: string;
  readonly from: string;
  readonly to: string;
};

export const blankPlace = (kind: AnyKind, rig: Rig, preferences: Preferences, station?: string, side?: string): PlaceAnswer => {
  const sides = kind.sides as readonly Side[];
  const wanted = side === 'inside' || side === 'outside' ? side : undefined;
  const at: PlaceForm = station !== undefined && kind.places.includes('station') ? 'station' : (kind.places[0] ?? 'rig');
  return {
    at,
    station: station ?? '',
    face: rig.faces[0]?.id ?? '',
    side: wanted && sides.includes(wanted) ? wanted : (sides[0] ?? 'outside'),
    unit: usualUnit('length', preferences),
    points: '',
    from: '',
    to: '',
  };
};

export const placeAnswerOf = (place: Place, kind: AnyKind, rig: Rig, preferences: Preferences): PlaceAnswer => {
  const blank = blankPlace(kind, rig, preferences);
  const show = (m: number): string => String(Number(fromSi(m, 'length', blank.unit).toFixed(3)));
  const pair = (p: FacePoint): string => `${show(p[0])}; ${show(p[1])}`;
  switch (place.at) {
    case 'rig':
      return { ...blank, at: 'rig' };
    case 'station':
      return { ...blank, at: 'station', station: place.station, side: place.side };
    case 'stretch':
      return { ...blank, at: 'stretch', station: place.station, side: place.side, from: show(place.from_m), to: show(place.to_m) };
    case 'point':
      return { ...blank, at: 'point', face: place.face, side: place.side, points: pair(place.point_m) };
    case 'outline':
      return { ...blank, at: 'outline', face: place.face, side: place.side, points: place.outline_m.map(pair).join('\n') };
  }
};

type Read = { readonly place: Place } | { readonly refusal: string };

const metresOf = (text: string, unit: string): number | undefined => {
  const read = readQuantity(text, 'length', unit, { least: -100, most: 100 });
  return read.ok ? read.value.si : undefined;
};

/** `1.2; 0.4`, also with a comma and a space between figures. */
const pointOf = (line: string, unit: string): FacePoint | undefined => {
  const [a, b, more] = line.split(/;|,\s+|\s{2,}|\t/).map((t) => t.trim());
  if (a === undefined || b === undefined || more !== undefined) return undefined;
  const [x, y] = [metresOf(a, unit), metresOf(b, unit)];
  return x === undefined || y === undefined ? undefined : [x, y];
};

/** The place as the logbook writes it, or what is wrong. */
export const readPlace = (answer: PlaceAnswer, rig: Rig): Read => {
  const { at, side, unit } = answer;
  if (at === 'rig') return { place: { at: 'rig' } };
  if (at === 'station' || at === 'stretch') {
    if (!rig.stations.some((s) => s.id === answer.station)) return { refusal: 'Choose a station from the list.' };
    if (at === 'station') return { place: { at, station: answer.station, side } };
    const [from, to] = [metresOf(answer.from, unit), metresOf(answer.to, unit)];
    if (from === undefined || to === undefined || from < 0) return { refusal: 'Give both ends of the stretch as lengths along the seam from its start.' };
    return to > from
      ? { place: { at, station: answer.station, side, from_m: from, to_m: to } }
      : { refusal: 'The stretch ends before it begins. The second length must be the greater.' };
  }
  const points = answer.points
    .split('\n')
    .filter((l) => l.trim() !== '')
    .map((l) => pointOf(l, unit));
  if (points.length === 0 || points.some((p) => p === undefined)) return { refusal: 'Give two figures a line with a semicolon between, such as 1.20; 0.45.' };
  const read = points as FacePoint[];
  const [first] = read;
  if (at === 'point') return first && read.length === 1 ? { place: { at, face: answer.face, side, point_m: first } } : { refusal: 'A point is one line of two figures.' };
  return read.length >= 3 ? { place: { at, face: answer.face, side, outline_m: read } } : { refusal: 'An outline needs three corners or more, one a line.' };
};

const FORM_WORDS: Readonly<Record<PlaceForm, string>> = {
  rig: 'The whole rig',
  station: 'A station',
  stretch: 'A stretch of a seam',
  point: 'A point on a face',
  outline: 'An outline on a face',
};

export const PlacePicker = ({
  kind,
  rig,
  answer,
  refusal,
  onChange,
}: {
  readonly kind: AnyKind;
  readonly rig: Rig;
  readonly answer: PlaceAnswer;
  readonly refusal: string | undefined;
  readonly onChange: (answer: PlaceAnswer) => void;
}) => {
  const id = useId();
  const forms = kind.places as readonly PlaceForm[];
  const sides = kind.sides as readonly Side[];
  const set = (part: Partial<PlaceAnswer>) => onChange({ ...answer, ...part });
  const face = rig.faces.find((f) => f.id === answer.face);
  // What is about the whole rig has no place to choose.
  if (forms.length === 1 && answer.at === 'rig') return null;
  return (
    <fieldset className="field-row">
      <legend>Where</legend>
      {forms.length > 1 && (
        <label className="line-field">
          <span>It is about</span>
          <select aria-label="It is about" value={answer.at} onChange={(e) => set({ at: e.target.value as PlaceForm })}>
            {forms.map((f) => (
              <option key={f} value={f}>
                {FORM_WORDS[f]}
              </option>
            ))}
          </select>
        </label>
      )}
      {(answer.at === 'station' || answer.at === 'stretch') && <StationChoice rig={rig} value={answer.station} suits={suiting(kind)} onChange={(station) => set({ station })} />}
      {(answer.at === 'point' || answer.at === 'outline') && (
        <label className="line-field">
          <span>Face</span>
          <select aria-label="Face" value={answer.face} onChange={(e) => set({ face: e.target.value })}>
            {rig.faces.map((f) => (
              <option key={f.id} value={f.id}>
                {f.name}
              </option>
            ))}
          </select>
        </label>
      )}
      {answer.at !== 'rig' && sides.length > 1 && (
        <span className="options inline">
          {sides.map((s) => (
            <label key={s} className="option">
              <input type="radio" name={`${id}-side`} checked={answer.side === s} onChange={() => set({ side: s })} />
              <span>
                <b>{upperFirst(s)}</b>
              </span>
            </label>
          ))}
        </span>
      )}
      {answer.at === 'stretch' && (
        <span className="day-fields">
          <label className="line-field">
            <span>From</span>
            <input type="text" inputMode="decimal" value={answer.from} onChange={(e) => set({ from: e.target.value })} />
          </label>
          <label className="line-field">
            <span>to</span>
            <input type="text" inputMode="decimal" value={answer.to} onChange={(e) => set({ to: e.target.value })} />
          </label>
          <UnitChoice quantity="length" label="stretch" unit={answer.unit} onChange={(unit) => set({ unit })} />
        </span>
      )}
      {(answer.at === 'point' || answer.at === 'outline') && (
        <>
          <span className="line-field">
            <label htmlFor={`${id}-points`}>{answer.at === 'point' ? 'At' : 'Corners, one a line'}</label>
            {answer.at === 'point' ? (
              <input id={`${id}-points`} type="text" value={answer.points} placeholder="1.20; 0.45" onChange={(e) => set({ points: e.target.value })} />
            ) : (
              <textarea id={`${id}-points`} rows={4} value={answer.points} placeholder={'1.20; 0.45\n1.60; 0.45\n1.60; 0.80'} onChange={(e) => set({ points: e.target.value })} />
            )}
            <UnitChoice quantity="length" label="coordinates" unit={answer.unit} onChange={(unit) => set({ unit })} />
          </span>
          {face && (
            <p className="mut small">
              First figure {face.x_axis}; second {face.y_axis}.
            </p>
          )}
        </>
      )}
      {refusal !== undefined && <p className="refusal">{refusal}</p>}
    </fieldset>
  );
};

/** Whether a kind is asked at a station, or can be added there. Kinds that no round asks go everywhere. */
const suiting = (kind: AnyKind): ((station: Station) => boolean) | undefined =>
  kind.suits || kind.adds ? (station) => kind.sides.some((side) => [asksAt(station, side)].some(({ asks, also }) => [...asks, ...also].includes(kind))) : undefined;

/** A station by its name: grouped by face, with a field that narrows the list. */
export const StationChoice = ({
  rig,
  value,
  onChange,
  label = 'Station',
  none,
  suits,
}: {
  readonly rig: Rig;
  readonly value: string;
  readonly onChange: (id: string) => void;
  readonly label?: string;
  /** What stands there while no station is chosen. */
  readonly none?: string;
  /** Leaves out where it is not asked; what is chosen already stays. */
  readonly suits?: ((station: Station) => boolean) | undefined;
}) => {
  const [search, setSearch] = useState('');
  const wanted = search.trim().toLowerCase();
  const fits = rig.stations.filter(
    (s) => !s.retired && (s.id === value || suits === undefined || suits(s)) && (wanted === '' || s.id === value || stationWords(rig, s).toLowerCase().includes(wanted)),
  );
  return (
    <span className="station-choice">
      <label className="line-field">
        <span>{label}</span>
        <select aria-label={label} value={value} onChange={(e) => onChange(e.target.value)}>
          <option value="">{none ?? `Choose one of ${fits.length}`}</option>
          {rig.faces.map((f) => {
            const here = fits.filter((s) => s.face === f.id);
            return here.length === 0 ? null : (
              <optgroup key={f.id} label={f.name}>
                {here.map((s) => (
                  <option key={s.id} value={s.id}>
                    {s.name}
                  </option>
                ))}
              </optgroup>
            );
          })}
        </select>
      </label>
      <label className="line-field">
        <span>Narrow the list</span>
        <input type="search" value={search} placeholder="window" onChange={(e) => setSearch(e.target.value)} />
      </label>
    </span>
  );
};
