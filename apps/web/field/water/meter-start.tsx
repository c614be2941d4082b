import { useState } from 'react';
import type { Face } from '../../../../src/rig';
import type { Field, Side } from '../../../../src/terms';
import type { Overview } from '../../session/session';
import { Over } from '../../shared/dialog';
import { PageTitle } from '../../shared/page-title';
import { href } from '../../shared/route';
import { useSettings } from '../../shared/settings';
import { Frame, Primary } from '../frame';
import { LiveKeys } from '../visit/ask';
import { type Answers, changed } from '../visit/form';
import { NumberCells } from '../visit/number-cells';
import { kindOf, SCALE_WORD, SCALES, type Told } from './series';
import { useTold } from './use-series';
import { WallCaution } from './wall-caution';
import { wallName } from './wall-name';

/** Underside and tongue have no inside that a meter reaches from within. */
const NO_INSIDE: readonly string[] = ['tongue'];

type Wall = { readonly face: Face; readonly side: Side };

/** Inside first, for most leaks are found there. */
const wallsOf = ({ rig }: Overview): readonly Wall[] => [
  ...rig.faces.filter((f) => !NO_INSIDE.includes(f.id)).map((face): Wall => ({ face, side: 'inside' })),
  ...rig.faces.filter((f) => f.id !== 'tongue').map((face): Wall => ({ face, side: 'outside' })),
];

/** Where the readings are likeliest to go on: a wall of an open leak, else the wall read last. */
const likeliest = (overview: Overview, walls: readonly Wall[]): Wall | undefined => {
  const water = overview.plan.water;
  const spot = water.leaks.find((l) => l.dryness.state !== 'dry')?.spots[0];
  const panel = [...water.panels].sort((a, b) => lastDay(b) - lastDay(a))[0];
  const at = spot ?? panel;
  return walls.find((w) => w.face.id === at?.face && w.side === at.side) ?? walls.find((w) => w.face.id === 'curb') ?? walls[0];
};

const lastDay = (panel: { readonly spots: readonly { readonly readings: readonly { readonly day: number }[] }[] }): number =>
  Math.max(0, ...panel.spots.flatMap((s) => s.readings.map((r) => r.day)));

/** Which wall, and with what: told once, then a series is only places and figures. */
export const MeterStart = ({ overview }: { readonly overview: Overview }) => {
  const { rig, record } = overview;
  const [told, tell] = useTold(rig);
  const walls = wallsOf(overview);
  const first = likeliest(overview, walls);
  return (
    <Frame
      cells={['Meter a wall']}
      back={{ to: href('rig', rig.id, 'water'), name: 'Back to water' }}
      record={record}
      ruled
      dock={first && <Primary words={wallName(first.face, first.side)} second="begin the readings" to={href('rig', rig.id, 'meter', first.face.id, first.side)} />}
    >
      <PageTitle id="meter" title="Meter a wall">
        With which meter, on which wall?
      </PageTitle>
      {told && <MeterUsed overview={overview} told={told} tell={tell} />}
      <WallCaution />
      <h2>Wall</h2>
      <ul className="rows">
        {walls.map(({ face, side }) => (
          <li key={`${face.id} ${side}`}>
            <a className="wide-row" href={href('rig', rig.id, 'meter', face.id, side)}>
              <span>
                <b>{wallName(face, side)}</b>
              </span>
            </a>
          </li>
        ))}
      </ul>
    </Frame>
  );
};

const MeterUsed = ({ overview, told, tell }: { readonly overview: Overview; readonly told: Told; readonly tell: (told: Told) => void }) => {
  const settings = useSettings();
  const [live, setLive] = useState(false);
  const [choosing, setChoosing] = useState(false);
  const kind = kindOf(told.scale);
  const temperature: Field | undefined = kind.fields['wood_temperature'];
  const material: Field | undefined = kind.fields['material'];
  const behind = material?.type === 'choice' ? material.options.find((o) => o.id === told.material)?.word : undefined;
  const answers: Answers = told.wood_temperature === undefined ? {} : { wood_temperature: told.wood_temperature };
  const known = overview.rig.meters;
  const chosen = known.find((m) => m.name === told.meter && m.scale === told.scale);
  const number = temperature?.type === 'number' ? (['wood_temperature', temperature] as const) : undefined;
  const change = (what: Parameters<typeof changed>[2]): void => tell({ ...told, wood_temperature: changed(kind, answers, what, settings)['wood_temperature'] });
  return (
    <div className="group">
      {known.length > 0 && (
        <fieldset className="choices lines" aria-label="Meters of this rig">
          {known.map((m) => (
            <button key={m.name} type="button" className="press" aria-pressed={m === chosen} onClick={() => tell({ ...told, scale: m.scale, meter: m.name })}>
              <b>{m.name}</b>
              {SCALE_WORD[m.scale]}
            </button>
          ))}
          <button type="button" className="press" aria-pressed={chosen === undefined} onClick={() => tell({ ...told, meter: '' })}>
            <b>Another meter</b>
          </button>
        </fieldset>
      )}
      {chosen === undefined && (
        <>
          <fieldset className="choices of-3" aria-label="Kind of meter">
            {SCALES.map((scale) => (
              <button key={scale} type="button" className="press" aria-pressed={scale === told.scale} onClick={() => tell({ ...told, scale })}>
                {SCALE_WORD[scale]}
              </button>
            ))}
          </fieldset>
          <label className="ask">
            <span className="label">
              Its name<small>, where there are two</small>
            </span>
            <input className="text-in" type="text" autoComplete="off" maxLength={60} value={told.meter} onChange={(e) => tell({ ...told, meter: e.currentTarget.value })} />
          </label>
        </>
      )}
      <div className="meter-facts">
        {number && <NumberCells fields={[number]} answers={answers} live={undefined} preferences={settings} focus={() => setLive(true)} change={change} />}
        {material?.type === 'choice' && (
          <button type="button" className="cell" onClick={() => setChoosing(true)} aria-label={`${material.label}: ${behind ?? 'choose'}`}>
            <b>{behind ?? 'Not told'}</b>
            <span>{material.label}</span>
          </button>
        )}
      </div>
      {choosing && material?.type === 'choice' && (
        <Over label={material.label} close={() => setChoosing(false)}>
          <h2>{material.label}</h2>
          <fieldset className="choices lines" aria-label={material.label}>
            {material.options.map((o) => (
              <button
                key={o.id}
                type="button"
                className="press"
                aria-pressed={o.id === told.material}
                onClick={() => {
                  tell({ ...told, material: o.id });
                  setChoosing(false);
                }}
              >
                <b>{o.word}</b>
                {o.line}
              </button>
            ))}
          </fieldset>
        </Over>
      )}
      {live && number && (
        <Over label={number[1].label} close={() => setLive(false)}>
          <NumberCells fields={[number]} answers={answers} live="wood_temperature" preferences={settings} focus={() => undefined} change={change} />
          <LiveKeys entry={number} change={change} />
          <Primary words="Done" act={() => setLive(false)} />
        </Over>
      )}
    </div>
  );
};
