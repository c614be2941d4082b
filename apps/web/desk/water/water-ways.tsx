import { letterOf } from '../../../../src/drawing';
import type { Candidate, Leak } from '../../../../src/plan';
import { stationById, stationWords, useDesk } from '../desk';
import { desk } from '../paths';
import { SourceLine } from '../source-line';
import { FigureButton } from '../worksheet-box';
import { chanceWords, isSettled } from './water-words';

const WORD = { likely: 'Likely', possible: 'Possible', unlikely: 'Unlikely' } as const;

/** Unlikely ways in beyond this many stand folded. */
const MOST = 4;

/** Every opening and seam from which water could get here, the likeliest first, and what is not on the list. */
export const WaysIn = ({ leak }: { readonly leak: Leak }) => {
  if (leak.candidates.length === 0) return null;
  const first = leak.candidates.filter((c, i) => i < MOST || c.word !== 'unlikely');
  const rest = leak.candidates.slice(first.length);
  const unlistedFirst = leak.confirmed === undefined && leak.unknown_source > (first[0]?.probability ?? 0);
  return (
    <section className="ways-in">
      <h2 className="group-head">
        Where it comes in <ChanceScale />
      </h2>
      <ol className="rows">
        {unlistedFirst && <NotListed leak={leak} />}
        {first.map((c) => (
          <Way key={c.station} leak={leak} candidate={c} letter={letterOf(leak.candidates.indexOf(c))} />
        ))}
        {!unlistedFirst && <NotListed leak={leak} />}
      </ol>
      {rest.length > 0 && (
        <details>
          <summary>{rest.length} more, all unlikely</summary>
          <ol className="rows">
            {rest.map((c) => (
              <Way key={c.station} leak={leak} candidate={c} letter={letterOf(leak.candidates.indexOf(c))} />
            ))}
          </ol>
        </details>
      )}
      <p className="mut small">
        Each chance stands for itself, and they need not add up to one: two seals can leak at once. Dot: as it stands now. Tick: before any reading.{' '}
        <Worksheet candidate={leak.candidates.find((c) => c.because.some((b) => b.worksheet))} />
      </p>
      {leak.apart !== undefined && !isSettled(leak) && leak.confirmed === undefined && <p className="ways-apart">{leak.apart}</p>}
      {leak.clues.length > 0 && (
        <ul className="plain">
          {leak.clues.map((c) => (
            <li key={c.text} className="small">
              {c.text}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
};

/** Where the readings fit no opening and no seam well, this comes first. */
const NotListed = ({ leak }: { readonly leak: Leak }) => (
  <li className="way-row">
    <span className="way-letter" />
    <div className="way-body">
      <h3>Somewhere not on this list</h3>
      <p className="mut small">A way in that nobody has thought of; instead of these, or beside them.</p>
    </div>
    <ChanceBar p={leak.unknown_source} open />
  </li>
);

const Worksheet = ({ candidate }: { readonly candidate: Candidate | undefined }) => {
  const sheet = candidate?.because.find((b) => b.worksheet)?.worksheet;
  return sheet ? <FigureButton worked={{ worksheet: sheet.id, inputs: sheet.inputs }}>Open the worksheet</FigureButton> : null;
};

/** The first clause of a reason; the whole stands under "why". */
const clause = (text: string): string => `${text.split(/[:;.](?= )/)[0]?.replace(/\.$/, '') ?? text}.`;

/** Where it lies, and what is known of its seal: the first reason and the one before the figure. */
const inShort = (because: Candidate['because']): string => {
  const [first, seal] = [because[0], because.length > 2 ? because[because.length - 2] : undefined];
  return [first, seal].flatMap((b) => (b ? [clause(b.text)] : [])).join(' ');
};

const Way = ({ leak, candidate, letter }: { readonly leak: Leak; readonly candidate: Candidate; readonly letter: string }) => {
  const { id, overview } = useDesk();
  const station = stationById(overview.rig, candidate.station);
  const { because } = candidate;
  return (
    <li className="way-row">
      <span className="way-letter">{letter}</span>
      <div className="way-body">
        <h3>
          <a href={desk.place(id, candidate.station)}>{station ? stationWords(overview.rig, station) : candidate.station}</a>
        </h3>
        <p className="mut small way-reason">{inShort(because)}</p>
        {because.length > 0 && (
          <details className="way-more">
            <summary className="small">why</summary>
            {because.map((b) => (
              <div key={b.text}>
                <p className="small">
                  {b.text} {b.worksheet && <FigureButton worked={{ worksheet: b.worksheet.id, inputs: b.worksheet.inputs }}>worksheet</FigureButton>}
                </p>
                <SourceLine source={b.source} />
              </div>
            ))}
          </details>
        )}
      </div>
      <div className="way-side">
        <span className="way-word">{leak.confirmed === candidate.station ? 'Seen' : WORD[candidate.word]}</span>
        {leak.confirmed === candidate.station ? <span className="small mut">by a test</span> : <ChanceBar p={candidate.probability} before={candidate.prior} />}
      </div>
    </li>
  );
};

const [LONG, HIGH] = [116, 16] as const;
const at = (p: number): number => 4 + Math.min(1, Math.max(0, p)) * (LONG - 8);

/** A chance on a line from 0 to 1: a dot as it stands, a tick as it was before anything was read. */
const ChanceBar = ({ p, before, open = false }: { readonly p: number; readonly before?: number; readonly open?: boolean }) => (
  <span className="chance">
    <svg className="chance-bar" viewBox={`0 0 ${LONG} ${HIGH}`} width={LONG} height={HIGH} aria-hidden="true">
      <path className="chance-line" d={`M4 8H${LONG - 4}M4 4v8M${LONG / 2} 5v6M${LONG - 4} 4v8`} />
      {before !== undefined && <path className="chance-shift" d={`M${at(before)} 8H${at(p)}M${at(before)} 3v10`} />}
      <circle className={open ? 'chance-open' : 'chance-dot'} cx={at(p)} cy={8} r={4.2} />
    </svg>
    <span className="small mut">{chanceWords(p)}</span>
  </span>
);

const ChanceScale = () => (
  <span className="chance-scale mut" aria-hidden="true">
    <span>0</span>
    <span>chance</span>
    <span>1</span>
  </span>
);
