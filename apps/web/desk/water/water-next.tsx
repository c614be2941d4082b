import { letterOf } from '../../../../src/drawing';
import { caution, type Leak } from '../../../../src/plan';
import { evaluate, worksheetById } from '../../../../src/worksheets';
import { causeWord } from '../../shared/leak-words';
import { count, lowerFirst, stationById, stationWords, upperFirst, useDesk } from '../desk';
import { useEveryLine } from '../logbook-lines';
import { desk } from '../paths';
import { whenWords } from '../when-picker';
import { FigureButton } from '../worksheet-box';
import { isSettled } from './water-words';

/** What else could have made it wet: ruled out, or to be looked into before a leak is named. */
export const OtherCauses = ({ leak }: { readonly leak: Leak }) => {
  const { id } = useDesk();
  const open = leak.other_causes.filter((c) => c.state === 'not-looked-at');
  const settled = isSettled(leak) || leak.stop.state === 'stopped';
  if (leak.other_causes.length === 0 || (settled && open.length === leak.other_causes.length)) return null;
  const found = leak.other_causes.find((c) => c.state === 'it-is-this');
  return (
    <section>
      <h2 className="group-head">
        Other causes{' '}
        <span className="mut">{found ? 'one explains it' : settled ? '' : open.length === 0 ? 'all ruled out' : `${count(open.length, 'is', 'are')} still to be ruled out`}</span>
      </h2>
      <ul className="rows">
        {leak.other_causes
          .filter((c) => !settled || c.state !== 'not-looked-at')
          .map((c) => (
            <li key={c.cause} className="row">
              <div className="row-body">
                <h3>
                  {causeWord(c.cause)}
                  <span className="cause-state">{c.state === 'ruled-out' ? 'ruled out' : c.state === 'it-is-this' ? 'it is this' : 'not looked at'}</span>
                </h3>
                <p className="mut small">
                  {c.state === 'not-looked-at' ? c.how : c.because.text}{' '}
                  {c.state === 'not-looked-at' && (
                    <a
                      href={desk.add(id, {
                        kind: c.cause === 'condensation' ? 'air-and-skin' : 'other-cause',
                        place: leak.place,
                        ...(c.cause === 'condensation' ? {} : { answers: { cause: c.cause } }),
                      })}
                    >
                      {c.cause === 'condensation' ? 'Record air and surface' : 'Record what you found'}
                    </a>
                  )}
                </p>
              </div>
            </li>
          ))}
      </ul>
    </section>
  );
};

const HOW = { hose: 'hose', soap: 'soap and slight pressure' } as const;

/** The test that would tell most for its time, with its steps, what to look out for, and what each outcome would mean. */
export const NextTest = ({ leak }: { readonly leak: Leak }) => {
  const { id, overview } = useDesk();
  const test = leak.next_test;
  const station = test && stationById(overview.rig, test.station);
  if (!test || !station || isSettled(leak)) return <TestsDone leak={leak} />;
  const letter = letterOf(leak.candidates.findIndex((c) => c.station === test.station));
  const cautions = test.cautions.flatMap((c) => caution(c) ?? []);
  return (
    <section className="next-test">
      <h2 className="group-head heavy">
        Next test: {HOW[test.how]} on {lowerFirst(stationWords(overview.rig, station))}
        {letter === '' ? '' : ` (${letter})`}, {test.minutes} minutes
      </h2>
      {cautions.length > 0 && (
        <div className="cautions">
          {cautions.map((c) => (
            <details key={c.id} className="caution">
              <summary>
                <b>{c.warning}</b>
              </summary>
              {c.do}
            </details>
          ))}
          {test.cautions
            .filter((c) => caution(c) === undefined)
            .map((c) => (
              <p key={c} className="caution">
                {c}
              </p>
            ))}
          <p className="mut small">The maker’s manual, local rules and licensed trades come first.</p>
        </div>
      )}
      <ol className="how-steps">
        {test.steps.map((s) => (
          <li key={s}>{upperFirst(s)}</li>
        ))}
      </ol>
      <Outcomes leak={leak} letter={letter} />
      {test.because.map((b) => (
        <p key={b.text} className="mut small">
          {b.text} {b.worksheet && <FigureButton worked={{ worksheet: b.worksheet.id, inputs: b.worksheet.inputs }}>worksheet</FigureButton>}
        </p>
      ))}
      <p className="buttons">
        <a className="button primary" href={desk.add(id, { kind: 'water-test', station: test.station, answers: { how: test.how } })}>
          Record the test
        </a>
      </p>
      <TestsDone leak={leak} />
    </section>
  );
};

/** What the chance would be after either outcome: from the worksheet, not from here. */
const Outcomes = ({ leak, letter }: { readonly leak: Leak; readonly letter: string }) => {
  const test = leak.next_test;
  const given = test?.because.find((b) => b.worksheet?.id === 'water-test-information')?.worksheet;
  const sheet = given && worksheetById(given.id);
  const worked = sheet && evaluate(sheet, given.inputs);
  if (!test || !given || !worked?.ok) return null;
  const { if_positive_fraction: yes, if_negative_fraction: no } = worked.value.result;
  const now = leak.candidates.find((c) => c.station === test.station)?.probability;
  if (typeof yes !== 'number' || typeof no !== 'number' || now === undefined) return null;
  const [came, dry] = test.how === 'hose' ? ['Water inside', 'Dry'] : ['Bubbles', 'No bubbles'];
  const show = (p: number): string => (p > 0.995 ? '> 0.99' : p < 0.005 ? '< 0.01' : p.toFixed(2));
  return (
    <div className="outcomes">
      <span className="outcome-now">
        <b>
          {letter || 'Now'} {show(now)}
        </b>
      </span>
      <svg viewBox="0 0 104 64" width="104" height="64" aria-hidden="true">
        <path className="outcome-line" d="M5 32C45 32 55 12 104 12M5 32C45 32 55 52 104 52" />
        <circle className="chance-dot" cx="5" cy="32" r="5" />
      </svg>
      <dl>
        <div>
          <dt>{came}</dt>
          <dd>{show(yes)}</dd>
        </div>
        <div>
          <dt>{dry}</dt>
          <dd>{show(no)}</dd>
        </div>
      </dl>
    </div>
  );
};

/** Water tests that were done, with their results. */
const TestsDone = ({ leak }: { readonly leak: Leak }) => {
  const { overview } = useDesk();
  const lines = useEveryLine();
  const done = leak.candidates.flatMap((c) => c.tests.map((t) => ({ test: t, station: c.station })));
  if (done.length === 0) return null;
  return (
    <div className="tests-done">
      <h3>Tests so far</h3>
      <ul className="plain">
        {done.map(({ test, station }) => {
          const line = lines?.find((l) => l.entry.id === test);
          const at = stationById(overview.rig, station);
          return (
            <li key={test} className="small">
              {at ? stationWords(overview.rig, at) : station}
              {line ? `. ${line.words}. ${whenWords(line.entry.observed_at)}` : ''}
            </li>
          );
        })}
      </ul>
    </div>
  );
};
