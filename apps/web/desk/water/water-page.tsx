import { type Leak, type Panel, shownAs, type Water } from '../../../../src/plan';
import { causeWord } from '../../shared/leak-words';
import { href } from '../../shared/route';
import { lowerFirst, useDesk } from '../desk';
import { MarkIcon } from '../mark-icon';
import { desk } from '../paths';
import { WaterMap } from './water-map';
import { NextTest, OtherCauses } from './water-next';
import { Proof } from './water-proof';
import { LooseSkins } from './water-skins';
import { WetTrend } from './water-trend';
import { WaysIn } from './water-ways';
import { asTitle, inOrder, isSettled, leakPlace, panelOfLeak, panelVerdict, readingsWords } from './water-words';

/** Where water comes in, how far it reaches, whether it dries, what to test next, and whether it is out. */
export const WaterPage = ({ what }: { readonly what: string | undefined }) => {
  const { overview } = useDesk();
  const { water } = overview.plan;
  const leaks = inOrder(water.leaks);
  const leak = leaks.find((l) => l.id === what) ?? (water.panels.some((p) => p.id === what) ? undefined : leaks[0]);
  if (leak) return <OneLeak water={water} leaks={leaks} leak={leak} />;
  const panel = water.panels.find((p) => p.id === what) ?? water.panels[0];
  return panel ? <OnePanel water={water} leaks={leaks} panel={panel} /> : <NothingRead />;
};

/** The leaks and the walls that were metered, where there is more than one of them. */
const Choice = ({ water, leaks, here }: { readonly water: Water; readonly leaks: readonly Leak[]; readonly here: string }) => {
  const { id, overview } = useDesk();
  const walls = water.panels.filter((p) => !leaks.some((l) => panelOfLeak(water, l)?.id === p.id));
  if (leaks.length + walls.length < 2) return null;
  return (
    <nav className="water-choice" aria-label="Wet places and walls">
      {leaks.map((l, i) => (
        <a key={l.id} href={desk.water(id, l.id)} aria-current={l.id === here ? 'page' : undefined}>
          {leaks.length > 1 ? `Leak ${i + 1}: ` : ''}
          {lowerFirst(leakPlace(overview.rig, l))}
          {isSettled(l) ? ', settled' : ''}
        </a>
      ))}
      {walls.map((p) => (
        <a key={p.id} href={desk.water(id, p.id)} aria-current={p.id === here ? 'page' : undefined}>
          {p.words}: {panelVerdict(water, p)}
        </a>
      ))}
    </nav>
  );
};

const OneLeak = ({ water, leaks, leak }: { readonly water: Water; readonly leaks: readonly Leak[]; readonly leak: Leak }) => {
  const { id, overview } = useDesk();
  const panel = panelOfLeak(water, leak);
  const findings = overview.plan.findings.filter((f) => f.raised_by === leak.id && f.rule.startsWith('w'));
  const first = findings[0];
  const condensation = leak.other_causes.find((c) => c.cause === 'condensation');
  // Until a test has found the way in, what else it may be comes before any seal.
  const ruleOut = isSettled(leak) || leak.confirmed !== undefined ? [] : leak.other_causes.filter((c) => c.state === 'not-looked-at').map((c) => causeWord(c.cause).toLowerCase());
  return (
    <main className="desk-page water-page" id="content">
      <header className="page-head with-mark">
        <MarkIcon mark={isSettled(leak) ? 'sound' : first ? shownAs(first) : 'before-rain'} professional={first?.who === 'professional'} size={28} />
        <div>
          <h1>{asTitle(leak.sentence)}</h1>
          <p className="mut">
            {leakPlace(overview.rig, leak)}. {panel ? `${readingsWords(panel)}.` : 'Nothing was metered here yet.'}{' '}
            {condensation && condensation.state !== 'not-looked-at' ? `Condensation: ${lowerFirst(condensation.because.text)}` : ''}
            {ruleOut.length > 0 && (
              <>
                {' '}
                <b className="rule-out">Rule out first: {ruleOut.join(', ')}.</b>
              </>
            )}
          </p>
        </div>
      </header>
      <Choice water={water} leaks={leaks} here={leak.id} />
      <div className="columns water-columns">
        <div className="water-left">
          {panel ? <WaterMap key={panel.id} panel={panel} leak={leak} /> : <NotMetered leak={leak} />}
          <WetTrend leak={leak} />
          <Proof leak={leak} />
          <LooseSkins />
        </div>
        <aside className="water-right">
          <WaysIn leak={leak} />
          <OtherCauses leak={leak} />
          <NextTest leak={leak} />
          {findings.length > 0 && (
            <p className="mut small">
              {findings.map((f, i) => (
                <span key={f.id}>
                  {i > 0 ? ' · ' : ''}
                  <a href={desk.finding(id, f.id)}>{f.title}</a>
                </span>
              ))}
            </p>
          )}
          <SetAside water={water} />
        </aside>
      </div>
    </main>
  );
};

/** Where only signs were seen: a stain, a soft place. */
const NotMetered = ({ leak }: { readonly leak: Leak }) => {
  const { id } = useDesk();
  const spot = leak.spots[0];
  return (
    <div className="empty">
      <p>Water showed here, but no meter was read. Readings tell how far it reaches and whether it dries: dry places first, then towards what looks wet.</p>
      <a className="button primary" href={spot ? href('rig', id, 'meter', spot.face, spot.side) : href('rig', id, 'meter')}>
        Meter this wall
      </a>
    </div>
  );
};

const SetAside = ({ water }: { readonly water: Water }) =>
  water.set_aside.length === 0 ? null : (
    <details>
      <summary>Not used, and why</summary>
      <ul className="plain">
        {water.set_aside.map((b) => (
          <li key={b.text} className="small">
            {b.text}
          </li>
        ))}
      </ul>
    </details>
  );

const NO_LEAK = { weather: 'Damp as its air is: no leak is named', condensation: 'It sweats: no leak is named' } as const;

/** A wall without a leak: the weather, sweat, or nothing wet at all. */
const OnePanel = ({ water, leaks, panel }: { readonly water: Water; readonly leaks: readonly Leak[]; readonly panel: Panel }) => {
  const verdicts = water.no_leak.filter((n) => n.panel === panel.id);
  const unknown = panel.spots.every((s) => s.state === 'not-known');
  const first = verdicts[0];
  const title = first ? NO_LEAK[first.why] : unknown ? 'Too few readings to say whether it is wet' : 'Nothing here stands out from its surroundings';
  return (
    <main className="desk-page water-page" id="content">
      <header className="page-head with-mark">
        <MarkIcon mark={first ? 'watch' : unknown ? 'not-seen' : 'sound'} size={28} />
        <div>
          <h1>{title}</h1>
          <p className="mut">
            {panel.words}. {readingsWords(panel, false)}.
          </p>
        </div>
      </header>
      <Choice water={water} leaks={leaks} here={panel.id} />
      <div className="columns water-columns">
        <div className="water-left">
          <WaterMap key={panel.id} panel={panel} leak={undefined} />
          <LooseSkins />
        </div>
        <aside className="water-right">
          <section>
            <h2 className="group-head">Why</h2>
            {verdicts.length === 0 && (
              <p className="mut">
                {unknown
                  ? 'A reading means little by itself. Read three dry places far from any opening on the same wall, the same day, with the same meter.'
                  : 'No reading is more above the dry places of its day, or above what its air explains, than a meter’s scatter.'}
              </p>
            )}
            <ul className="rows">
              {verdicts
                .flatMap((v) => v.because)
                .map((b) => (
                  <li key={b.text} className="row">
                    <p>{b.text}</p>
                  </li>
                ))}
            </ul>
          </section>
          <MeterMore panel={panel} />
          <SetAside water={water} />
        </aside>
      </div>
    </main>
  );
};

const MeterMore = ({ panel }: { readonly panel: Panel }) => {
  const { id } = useDesk();
  return (
    <p className="buttons">
      <a className="button" href={href('rig', id, 'meter', panel.face, panel.side)}>
        Meter this wall again
      </a>
    </p>
  );
};

/** Before the first reading: one sentence, where to read first, and how to begin. */
const NothingRead = () => {
  const { id } = useDesk();
  return (
    <main className="desk-page water-page" id="content">
      <header className="page-head">
        <h1>No wall was metered yet</h1>
        <p className="lead">A handful of readings tells whether a wall is wet, how far it reaches, and where the water most likely comes in.</p>
        <p className="buttons">
          <a className="button primary" href={href('rig', id, 'meter')}>
            Meter a wall
          </a>
          <a className="button" href={desk.add(id, { kind: 'inside-signs' })}>
            Write down a stain, a smell, a soft place
          </a>
        </p>
      </header>
      <div className="narrow">
        <h2 className="group-head">Where to read first</h2>
        <ol className="how-steps">
          {READ_FIRST.map((s) => (
            <li key={s}>{s}</li>
          ))}
        </ol>
        <p className="mut small">Wires and gas lines run in walls: short pins, and none where lines run. The meter’s own manual comes first.</p>
        <LooseSkins />
      </div>
    </main>
  );
};

const READ_FIRST: readonly string[] = [
  'Three dry places on the same wall, far from any opening: they are the yardstick of the day.',
  'Below the lower corners of every window, inside.',
  'Along the floor line, and in cupboards under the roof edge.',
  'Round every opening of the roof, on the ceiling.',
  'Where something is wet, on a grid of a hand’s width until it is dry again all round.',
];
