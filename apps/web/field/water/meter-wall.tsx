import { useEffect, useMemo, useState } from 'react';
import { faceFrame, faceToSheet, sheetToFace } from '../../../../src/drawing';
import { ENOUGH_DRY } from '../../../../src/plan';
import type { Face } from '../../../../src/rig';
import type { FacePoint, Field, Side } from '../../../../src/terms';
import { type Typed, unitOf } from '../../../../src/units';
import type { Overview } from '../../session/session';
import { useMoistureField } from '../../session/use-session';
import { today } from '../../shared/clock';
import { useKeys } from '../../shared/keys';
import { PageTitle } from '../../shared/page-title';
import { href, useRoute } from '../../shared/route';
import { useSettings } from '../../shared/settings';
import { UndoSign } from '../../shared/signs';
import { Cell, Frame, Primary } from '../frame';
import { changed, ERASE, ready } from '../visit/form';
import { NumberCells } from '../visit/number-cells';
import { NumberKeys } from '../visit/number-keys';
import { PlaceKeys } from './place-keys';
import { PlaceList } from './place-list';
import { answersOf, kindOf, leftOf, SCALE_WORD, SCALES, type Series, type Surface, type Told, type ToRead, wasKept } from './series';
import { countWords, doingOf, nextToRead } from './series-words';
import { unbroken } from './unbroken';
import { useSeries, useTold } from './use-series';
import { dotsOf, STATE_WORD } from './wall-dots';
import { notThere, placeWords, shortWords, snapped, stepM, tapesOf } from './wall-measure';
import { wallName } from './wall-name';
import { WallPicture } from './wall-picture';
import { mapHref } from './water-addresses';
import { againOf, leakOf, panelOf, spotAt } from './water-of';

type Props = { readonly overview: Overview; readonly face: Face; readonly side: Side };

/** One series on one wall: waits for what was told of the meter and for what a killed page left half done. */
export const MeterWall = ({ overview, face, side }: Props) => {
  const { rig, plan } = overview;
  const { query } = useRoute();
  const [told] = useTold(rig);
  // biome-ignore lint/correctness/useExhaustiveDependencies: which places are read again is settled when the series begins
  const again = useMemo(() => {
    const leak = leakOf(plan.water, query['leak']);
    const all = leak ? againOf(plan.water, leak).filter((a) => a.face === face.id && a.side === side) : [];
    return all.find((a) => a.scale === query['scale'] && a.meter === (query['meter'] ?? '')) ?? all[0];
  }, [query['leak'], query['scale'], query['meter'], face.id, side]);
  if (!told) return <Waiting record={overview.record} />;
  const asked = SCALES.find((scale) => scale === query['scale']);
  const meant: Told = again ? { ...told, scale: again.scale, meter: again.meter } : asked ? { ...told, scale: asked, meter: query['meter'] ?? '' } : told;
  return <Wall overview={overview} face={face} side={side} told={meant} again={again?.places ?? NONE} leak={query['leak']} />;
};

const NONE: readonly ToRead[] = [];
const DIGITS = '0123456789'.split('');
type WallProps = Props & { readonly told: Told; readonly again: readonly ToRead[]; readonly leak: string | undefined };

const Wall = (props: WallProps) => {
  const { overview, face, side } = props;
  const held = useSeries(overview.rig.id, `${face.id}/${side}`, (point_m) => ({ at: 'point', face: face.id, side, point_m }));
  const { series } = held;
  return series ? <Reading {...props} {...held} series={series} /> : <Waiting record={overview.record} />;
};

const Waiting = ({ record }: Pick<Overview, 'record'>) => (
  <Frame cells={['Meter a wall']} record={record} dock={<Primary words="One moment" disabled />}>
    {null}
  </Frame>
);

type ReadingProps = WallProps & Omit<ReturnType<typeof useSeries>, 'series'> & { readonly series: Series };

const Reading = ({ overview, face, side, told, again, leak, series, put, keep, undo, busy }: ReadingProps) => {
  const { rig, plan, record } = overview;
  const settings = useSettings();
  const kind = kindOf(told.scale);
  const tapes = useMemo(() => tapesOf(rig, face, side), [rig, face, side]);
  const [mode, setMode] = useState<'keys' | 'place' | 'list'>('keys');
  const [closer, setCloser] = useState(series.point_m !== undefined);
  const [agreed, setAgreed] = useState('');

  const day = today();
  const panel = panelOf(plan.water, face.id, side, told);
  const map = useMoistureField(rig.id, panel?.id ?? '');
  const readToday = panel?.spots.filter((s) => s.readings.some((r) => r.day === day)) ?? [];
  const dryToday = readToday.filter((s) => s.readings.some((r) => r.day === day && r.dry_reference && r.value !== undefined)).length;
  const wanted = map?.next_places ?? NONE;
  const where = series.point_m && placeWords(series.point_m, tapes, settings);
  const left = useMemo(() => leftOf(again, series.kept), [again, series.kept]);
  const next = nextToRead(series.kept, left, wanted, (p) => placeWords(p, tapes, settings));
  const dots = useMemo(() => dotsOf(panel, day, left.length > 0 ? left : wanted), [panel, day, left, wanted]);

  const answers = answersOf(told, series);
  const state = ready(kind, answers, day);
  const doubt = state.state === 'complete' ? state.doubts[0] : undefined;
  const doubted = doubt !== undefined && agreed !== JSON.stringify(answers);
  const wrong = series.point_m && notThere(rig, face, series.point_m);
  const given = typeof series.reading === 'object' && 'text' in series.reading ? series.reading : undefined;
  const field: Field | undefined = kind.fields['reading'];
  const figure = given && field?.type === 'number' ? `${given.text} ${unitOf(field.quantity, given.unit).symbol}`.trim() : '';

  // A page that was killed right after the reading was kept still holds it as a draft: it is not asked for again.
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the series is taken up
  useEffect(() => {
    const typed = state.state === 'complete' ? (state.body['reading'] as Typed | undefined) : undefined;
    const here = series.point_m && spotAt(panel, series.point_m)?.readings.findLast((r) => r.day === day);
    if (here && typed && Math.abs(here.as_read - typed.si) < 1e-9 && !series.kept.some((k) => k.entry === here.entry)) put(wasKept(series, here.entry, dryToday >= ENOUGH_DRY));
  }, []);

  const goTo = (to: ToRead): void => {
    put({ ...series, point_m: to.point_m, reading: undefined, dry: to.dry ?? false });
    setCloser(true);
    setMode('keys');
  };
  const at = (point_m: FacePoint): void => put({ ...series, point_m });
  const move = (right: number, up: number): void => {
    const step = stepM(series.step, settings);
    const frame = faceFrame(rig, face.id, side);
    const [x, y] = faceToSheet(frame, series.point_m ?? series.kept.at(-1)?.point_m ?? middleOf(face));
    at(snapped(sheetToFace(frame, [x + right * step, y - up * step]), step, tapes));
    setCloser(true);
  };
  const type = (key: string): void => put({ ...series, reading: changed(kind, answers, { do: 'key', field: 'reading', key }, settings)['reading'] });

  const refused = state.state === 'refused' ? state.refusals[0]?.sentence : undefined;
  const doing = doingOf({ placing: mode === 'place', where, wrong, figure, refused, doubted, dry: series.dry, next });
  const press = (): void => {
    if (busy) return;
    switch (doing.does) {
      case 'go':
        if (next) goTo(next.to);
        return;
      case 'read-here':
        setMode('keys');
        return;
      case 'agree':
        setAgreed(JSON.stringify(answers));
        return;
      case 'keep':
        void keep(told, dryToday + (series.dry ? 1 : 0) >= ENOUGH_DRY, `${figure}, ${where ?? ''}`);
        return;
      case 'wait':
    }
  };

  useKeys(
    mode === 'list'
      ? {}
      : Object.fromEntries<() => void>([
          ...DIGITS.map((d) => [d, () => type(d)] as const),
          ['.', () => type('.')],
          [',', () => type('.')],
          ['Backspace', () => type(ERASE)],
          ['Enter', press],
          ['u', () => void undo()],
          ['d', () => put({ ...series, dry: !series.dry })],
          ['ArrowLeft', () => move(-1, 0)],
          ['ArrowRight', () => move(1, 0)],
          ['ArrowUp', () => move(0, 1)],
          ['ArrowDown', () => move(0, -1)],
        ]),
  );

  const name = wallName(face, side);
  if (mode === 'list')
    return <PlaceList overview={overview} name={name} panel={panel} day={day} tapes={tapes} again={left} wanted={wanted} go={goTo} back={() => setMode('keys')} />;

  const last = series.kept.at(-1);
  const judged = last && spotAt(panel, last.point_m);
  return (
    <Frame
      cells={[
        panel && readToday.length > 0 ? (
          <a key="map" className="to-map" href={mapHref(rig.id, panel, leakOf(plan.water, leak))}>
            {readToday.length} read: map
          </a>
        ) : (
          `${readToday.length} read`
        ),
        SCALE_WORD[told.scale],
      ]}
      back={{ to: href('rig', rig.id, leak === undefined ? 'meter' : 'water'), name: 'Stop here, go on later' }}
      record={record}
      dock={
        <>
          <Primary words={busy ? 'Keeping it' : doing.words} second={busy ? figure : unbroken(doing.second ?? '')} act={press} disabled={busy || doing.does === 'wait'} />
          {mode === 'place' ? (
            <Cell act={() => setMode('list')}>All places</Cell>
          ) : (
            <button type="button" className="press" aria-pressed={series.dry} onClick={() => put({ ...series, dry: !series.dry })}>
              Dry place
            </button>
          )}
          <Cell undo act={() => void undo()} disabled={(given === undefined && !last) || busy}>
            <UndoSign /> {given ? `Undo ${given.text}` : last ? `Undo ${last.text}` : 'Undo'}
          </Cell>
        </>
      }
    >
      <div className={`series-head${mode === 'keys' && series.point_m ? ' placed' : ''}`}>
        <div>
          <PageTitle id={`meter ${face.id} ${side}`} title={`Meter: ${name}`}>
            {name}
          </PageTitle>
          {(wrong ?? (doubted ? doubt.sentence : undefined)) ? (
            <p role="alert">
              <b>{wrong ?? doubt?.sentence}</b>
            </p>
          ) : (
            <p className="run">
              {last && judged && (
                <b>
                  {last.text}: {STATE_WORD[judged.state]}.{' '}
                </b>
              )}
              {countWords({ kept: series.kept, of: again.length, left: left.length, dryMissing: Math.max(0, ENOUGH_DRY - dryToday), wanted: wanted.length })}
            </p>
          )}
        </div>
        <button type="button" className="press" onClick={() => setCloser(!closer)}>
          {closer ? 'Whole' : 'Closer'}
        </button>
      </div>
      <WallPicture
        rig={rig}
        face={face}
        side={side}
        dots={dots}
        point={series.point_m}
        closer={closer}
        step_m={stepM(series.step, settings)}
        tapes={tapes}
        away={mode === 'keys' && series.point_m !== undefined}
        touch={(p) => {
          at(snapped(p, stepM(series.step, settings), tapes));
          setCloser(true);
        }}
      />
      {mode === 'keys' ? (
        <div className="low group">
          <div className="reading-row">
            {field?.type === 'number' && (
              <NumberCells
                fields={[['reading', field]]}
                answers={answers}
                live="reading"
                preferences={settings}
                focus={() => undefined}
                change={(c) => put({ ...series, reading: changed(kind, answers, c, settings)['reading'] })}
              />
            )}
            <button type="button" className="cell" onClick={() => setMode('place')} aria-label={`Place: ${where ?? 'none yet'}. Choose it by steps or lengths`}>
              {series.point_m ? shortWords(series.point_m, tapes, settings).map((w, i) => <b key={tapes[i === 0 ? 0 : 1].label}>{w}</b>) : <b>Where?</b>}
              {series.surface === 'dry' ? series.point_m ? null : <span>by lengths</span> : <span>surface {series.surface}</span>}
            </button>
          </div>
          {/* Where there is no room for both, the wall stands until a place is chosen, then the keys. */}
          <div className={series.point_m ? '' : 'keys-later'}>
            <NumberKeys label="reading" press={type} />
          </div>
        </div>
      ) : (
        <>
          <PlaceKeys
            point={series.point_m}
            tapes={tapes}
            step={series.step}
            preferences={settings}
            setStep={(step) => put({ ...series, step })}
            move={move}
            place={(p) => {
              at(p);
              setCloser(true);
            }}
            done={press}
          />
          <SurfaceRow surface={series.surface} set={(surface) => put({ ...series, surface })} />
        </>
      )}
    </Frame>
  );
};

const middleOf = (face: Face): FacePoint => {
  const mean = (all: readonly number[]): number => (Math.min(...all) + Math.max(...all)) / 2;
  return [mean(face.outline_m.map((p) => p[0])), mean(face.outline_m.map((p) => p[1]))];
};

const SURFACES: readonly (readonly [Surface, string])[] = [
  ['dry', 'Surface dry'],
  ['wet', 'Wet'],
  ['frozen', 'Frozen'],
];

const SurfaceRow = ({ surface, set }: { readonly surface: Surface; readonly set: (surface: Surface) => void }) => (
  <fieldset className="choices of-3" aria-label="The surface was">
    {SURFACES.map(([id, word]) => (
      <button key={id} type="button" className="press" aria-pressed={id === surface} onClick={() => set(id)}>
        {word}
      </button>
    ))}
  </fieldset>
);
