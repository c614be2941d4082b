import type { Because, Leak } from '../../../../src/plan';
import { showDay } from '../../../../src/units';
import { dryWord } from '../../shared/leak-words';
import { href } from '../../shared/route';
import { useDesk } from '../desk';
import { MarkIcon } from '../mark-icon';
import { desk } from '../paths';
import { FigureButton } from '../worksheet-box';
import { isSettled, stopWords } from './water-words';

/** Two findings that close apart: that no more comes in, and that it is dry again; with what they still need and when. */
export const Proof = ({ leak }: { readonly leak: Leak }) => {
  const { id, overview } = useDesk();
  const due = [...leak.due].sort((a, b) => Number(a.done === undefined) - Number(b.done === undefined) || a.from - b.from);
  const tested = leak.confirmed ?? (leak.repairs.length > 0 ? leak.candidates[0]?.station : undefined);
  const spot = leak.spots[0];
  return (
    <section className="proof">
      <h2 className="group-head">Is it out?</h2>
      <ul className="rows">
        <Finding
          sound={leak.stop.state === 'stopped'}
          bad={leak.stop.state === 'reopened' || leak.stop.state === 'open'}
          words={stopWords(leak)}
          closed={leak.stop.closed}
          because={leak.stop.because}
        />
        <Finding
          sound={leak.dryness.state === 'dry'}
          bad={leak.dryness.state === 'reopened' || leak.dryness.state === 'wetting'}
          words={leak.dryness.state === 'dry' ? 'Dry again' : dryWord(leak)}
          closed={leak.dryness.closed}
          because={leak.dryness.because}
        />
      </ul>
      {due.length > 0 && (
        <>
          <h3 className="due-head">{due.some((d) => d.done === undefined) ? 'Still to be shown' : 'What had to be shown'}</h3>
          <ul className="plain due-list">
            {due.map((d) => (
              <li key={`${d.what}${d.from}${d.words}`}>
                <span className="due-when">
                  {d.done !== undefined
                    ? 'done'
                    : d.what === 'after-rain'
                      ? 'after rain'
                      : d.from <= overview.plan.on
                        ? d.until === undefined
                          ? 'now'
                          : `until ${showDay(d.until, true)}`
                        : `from ${showDay(d.from, true)}`}
                </span>
                <span className={d.done === undefined ? '' : 'mut'}>{d.words}</span>
              </li>
            ))}
          </ul>
        </>
      )}
      {!isSettled(leak) && (
        <p className="buttons">
          {(leak.stop.state === 'open' || leak.stop.state === 'reopened') && leak.confirmed !== undefined && (
            <a className="button primary" href={desk.add(id, { kind: 'resealed', station: leak.confirmed })}>
              Record the repair
            </a>
          )}
          {spot && leak.spots.some((s) => s.readings.length > 0) && (
            <a className="button" href={href('rig', id, 'meter', spot.face, spot.side)}>
              Meter the same places again
            </a>
          )}
          {leak.repairs.length > 0 && tested !== undefined && (
            <a className="button" href={desk.add(id, { kind: 'water-test', station: tested, answers: { how: 'hose' } })}>
              Record a repeated hose test
            </a>
          )}
          <a className="button" href={desk.add(id, { kind: 'rain-fell' })}>
            Record a rain
          </a>
        </p>
      )}
    </section>
  );
};

const Finding = ({
  sound,
  bad,
  words,
  closed,
  because,
}: {
  readonly sound: boolean;
  readonly bad: boolean;
  readonly words: string;
  readonly closed: Leak['stop']['closed'];
  readonly because: readonly Because[];
}) => (
  <li className="row">
    <MarkIcon mark={sound ? 'sound' : bad ? 'before-rain' : 'watch'} size={16} />
    <div className="row-body">
      <h3>
        {words}
        {closed === undefined ? '' : `, ${showDay(closed)}`}
      </h3>
      {because.map((b) => (
        <p key={b.text} className="mut small">
          {b.text} {b.worksheet && <FigureButton worked={{ worksheet: b.worksheet.id, inputs: b.worksheet.inputs }}>worksheet</FigureButton>}
        </p>
      ))}
    </div>
  </li>
);
