import type { Leak, Likelihood } from '../../../../src/plan';
import type { Overview } from '../../session/session';
import { MarkSign } from '../../shared/mark-sign';
import { stationById } from '../../shared/rig-words';
import { href, withQuery } from '../../shared/route';
import { causeWord, dryWord, dueOf, markOf, stageOf, stageWord } from './leak-words';
import { unbroken } from './unbroken';
import { wallName } from './wall-name';
import { mapHref, panelsOf, trendHref } from './water-addresses';
import { againOf } from './water-of';

export const LIKELY_WORD: Readonly<Record<Likelihood, string>> = { likely: 'Likely', possible: 'Possible', unlikely: 'Unlikely' };
const MOST_CANDIDATES = 4;

type Props = { readonly overview: Overview; readonly leak: Leak; readonly title: 'h1' | 'h2'; readonly head?: React.ReactNode };

export const stationName = (overview: Overview, id: string): string => stationById(overview.rig, id)?.name ?? id;

/** The wall or the station where it shows, to tell one leak from another. */
const whereOf = ({ rig }: Overview, leak: Leak): string => {
  const [spot] = leak.spots;
  const face = rig.faces.find((f) => f.id === spot?.face);
  return spot?.station !== undefined || !face || !spot ? (spot?.words ?? '') : wallName(face, spot.side);
};

/** One leak: where it stands, where it most likely comes in, what else it could be, what a repair still has to show. */
export const LeakPart = ({ overview, leak, head }: Omit<Props, 'title'>) => {
  const { rig, plan } = overview;
  const stage = stageOf(leak);
  const settled = stage === 'explained' || stage === 'dry';
  const causes = leak.other_causes.filter((c) => c.state !== 'ruled-out');
  const due = dueOf(leak);
  const reasons = stage === 'drying' || stage === 'dry' ? [...leak.stop.because, ...leak.dryness.because] : leak.stop.because;
  return (
    <>
      <section className="verdict bare" aria-label="Leak">
        <MarkSign mark={markOf(leak)} />
        <div>
          {head ?? <h2>{stageWord(leak)}</h2>}
          {plan.water.leaks.length > 1 && (
            <p>
              <b>{whereOf(overview, leak)}</b>
            </p>
          )}
          <p>{unbroken(leak.sentence)}</p>
        </div>
      </section>
      {reasons.length > 0 && (
        <ul className="plain-list">
          {reasons.slice(0, 2).map((b) => (
            <li key={b.text}>{unbroken(b.text)}</li>
          ))}
        </ul>
      )}
      <Pictures overview={overview} leak={leak} />
      {!settled && causes.length > 0 && leak.repairs.length === 0 && (
        <section>
          <h2>Rule out first</h2>
          <div className="boxes causes">
            {causes.map((c) => (
              <a
                key={c.cause}
                className="press"
                href={withQuery(href('rig', rig.id, 'water-note', c.cause === 'condensation' ? 'air-and-skin' : 'other-cause'), { leak: leak.id, cause: c.cause })}
              >
                {causeWord(c.cause)}
              </a>
            ))}
          </div>
        </section>
      )}
      {(due.length > 0 || leak.repairs.length > 0) && !settled && <Proof overview={overview} leak={leak} />}
      {!settled && leak.stop.state !== 'stopped' && leak.candidates.length > 0 && (
        <section>
          <h2>Where it may come in</h2>
          <ol className="rows">
            {leak.candidates.slice(0, MOST_CANDIDATES).map((c, i) => (
              <li key={c.station}>
                <a className="candidate" href={withQuery(href('rig', rig.id, 'water-test', leak.id), { station: c.station })}>
                  <span className="number">{i + 1}</span>
                  <span>
                    <b>{stationName(overview, c.station)}</b>
                    {i === 0 && unbroken(c.because[0]?.text ?? '')}
                  </span>
                  <span className="end">{leak.confirmed === c.station ? 'Seen' : LIKELY_WORD[c.word]}</span>
                </a>
              </li>
            ))}
          </ol>
          {leak.candidates.length > MOST_CANDIDATES && <p>{leak.candidates.length - MOST_CANDIDATES} more, less likely.</p>}
          {leak.apart !== undefined && leak.confirmed === undefined && <p>{unbroken(leak.apart)}</p>}
        </section>
      )}
    </>
  );
};

/** How far it reaches and whether it dries, each drawn on a screen of its own. */
const Pictures = ({ overview, leak }: { readonly overview: Overview; readonly leak: Leak }) => {
  const { rig, plan } = overview;
  const panels = panelsOf(plan.water, leak);
  if (panels.length === 0) return null;
  return (
    <div className="boxes causes">
      {panels.map((p) => (
        <a key={p.id} className="press" href={mapHref(rig.id, p, leak)}>
          {panels.length === 1 ? 'Map: how far' : `Map: ${p.words}`}
        </a>
      ))}
      <a className="press" href={trendHref(rig.id, leak)}>
        Does it dry?
      </a>
    </div>
  );
};

/** What the repair still has to show and when, and one touch into reading the same places again. */
const Proof = ({ overview, leak }: { readonly overview: Overview; readonly leak: Leak }) => {
  const { rig, plan } = overview;
  const again = againOf(plan.water, leak);
  const tested = leak.confirmed ?? leak.candidates[0]?.station;
  return (
    <section>
      <h2>What it still has to show</h2>
      <ul className="rows">
        <li>
          <div className="row proof-row">
            <MarkSign mark={leak.stop.state === 'stopped' ? 'sound' : leak.stop.state === 'reopened' ? 'before-rain' : 'watch'} />
            <span>
              <b>{leak.stop.state === 'stopped' ? 'Leak stopped' : 'That no more comes in'}</b>
            </span>
          </div>
        </li>
        <li>
          <div className="row proof-row">
            <MarkSign mark={leak.dryness.state === 'dry' ? 'sound' : 'watch'} />
            <span>
              <b>{leak.dryness.state === 'dry' ? 'Dry again' : `That it dries: ${dryWord(leak).toLowerCase()}`}</b>
            </span>
          </div>
        </li>
        {dueOf(leak).map((d) => (
          <li key={`${d.what} ${d.from}`}>
            <div className="row due-row">
              <span>{unbroken(d.words)}</span>
              <span className="end">{d.what === 'after-rain' ? 'after rain' : d.from <= plan.on ? 'now' : ''}</span>
            </div>
          </li>
        ))}
        {again.map((a) => (
          <li key={`${a.face} ${a.side} ${a.scale} ${a.meter}`}>
            <a className="wide-row" href={againHref(rig.id, leak, a)}>
              <span>
                <b>Meter the same places again</b>
                {a.places.length === 1 ? 'one place' : `${a.places.length} places`},{' '}
                {(rig.faces.find((f) => f.id === a.face)?.[a.side === 'inside' ? 'inside_name' : 'name'] ?? a.face).toLowerCase()}
                {a.meter === '' ? '' : `, ${a.meter}`}
              </span>
            </a>
          </li>
        ))}
        {tested !== undefined && (
          <li>
            <a className="wide-row" href={withQuery(href('rig', rig.id, 'water-test', leak.id), { station: tested })}>
              <span>
                <b>Test it again with the hose</b>
                {stationName(overview, tested)}
              </span>
            </a>
          </li>
        )}
      </ul>
    </section>
  );
};

export const againHref = (rig: string, leak: Leak, a: ReturnType<typeof againOf>[number]): string =>
  withQuery(href('rig', rig, 'meter', a.face, a.side), { leak: leak.id, scale: a.scale, meter: a.meter });
