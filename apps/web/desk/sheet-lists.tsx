import { useState } from 'react';
import { type Finding, isOpen, shownAs } from '../../../src/plan';
import { MARK_WORD, MARKS, type Mark, type Station, type StationId } from '../../../src/terms';
import type { Overview } from '../session/session';
import { byUrgencyGroups, lifeWords, numberOf, openFindings, whoWords } from './answers';
import { findingStation, lowerFirst, placeWords, stationWords, upperFirst, useDesk } from './desk';
import { thingOf } from './drawings';
import { MarkIcon } from './mark-icon';
import { desk } from './paths';
import { ProfessionalFlag } from './plan-page';
import { type Walked, walked } from './walking-order';

export const SheetLists = ({ overview, selected, onSelect }: { readonly overview: Overview; readonly selected: string | undefined; readonly onSelect: (id: string) => void }) => {
  const { rig, plan } = overview;
  const [search, setSearch] = useState('');
  const wanted = search.trim().toLowerCase();
  const open = openFindings(plan);
  const groups = byUrgencyGroups(open.map((finding) => ({ finding, urgency: shownAs(finding) })));
  return (
    <aside className="sheet-lists">
      <Legend overview={overview} />
      {groups.map((g) => (
        <section key={g.urgency} className="finding-group">
          <h2 className="group-line">{g.word}</h2>
          <ol className="finding-list">
            {g.items.map(({ finding: f }) => (
              <FindingLine
                key={f.id}
                finding={f}
                overview={overview}
                selected={selected !== undefined && (thingOf(selected) === f.id || thingOf(selected) === findingStation(f))}
                onSelect={onSelect}
              />
            ))}
          </ol>
        </section>
      ))}
      {open.length === 0 && <p className="mut">Nothing that was recorded asks for anything.</p>}
      <section className="station-lists" aria-label="All stations in walking order">
        <h2 className="group-head">
          All stations <span className="mut">in walking order</span>
        </h2>
        <label className="search-line">
          <span className="unseen">Search the stations</span>
          <input type="search" data-search value={search} placeholder="Search the stations" onChange={(e) => setSearch(e.target.value)} />
        </label>
        <StationList
          overview={overview}
          stops={walked(rig).filter(({ station }) => wanted === '' || stationWords(rig, station).toLowerCase().includes(wanted))}
          selected={selected}
          onSelect={onSelect}
        />
      </section>
    </aside>
  );
};

const FindingLine = ({
  finding,
  overview,
  selected,
  onSelect,
}: {
  readonly finding: Finding;
  readonly overview: Overview;
  readonly selected: boolean;
  readonly onSelect: (id: string) => void;
}) => {
  const { id } = useDesk();
  return (
    <li className={selected ? 'finding-line chosen' : 'finding-line'}>
      <MarkIcon mark={shownAs(finding)} professional={finding.who === 'professional'} size={16} />
      <span className="row-number">{numberOf(overview.plan, finding.id)}</span>
      <div>
        <h3>
          <a href={desk.finding(id, finding.id)} onFocus={() => onSelect(`mark/${finding.id}`)}>
            {placeWords(overview.rig, finding.place)}
          </a>
        </h3>
        <p className="mut small">
          {finding.title}
          {finding.because[0] ? `: ${lowerFirst(finding.because[0].text)}` : ''} {finding.life === 'open' ? '' : `${lifeWords(finding)}. `}
          {finding.who === 'professional' ? `${whoWords(finding.who)}.` : ''}
        </p>
      </div>
    </li>
  );
};

/** What the marks mean and how many there are: the legend is the count. */
const Legend = ({ overview }: { readonly overview: Overview }) => {
  const { plan } = overview;
  const professional = plan.findings.filter((f) => isOpen(f) && f.who === 'professional').length;
  return (
    <dl className="legend" aria-label="Marks">
      {MARKS.map((m: Mark) => (
        <div key={m}>
          <dt>
            <MarkIcon mark={m} size={16} /> {MARK_WORD[m]}
          </dt>
          <dd>{plan.counts[m]}</dd>
        </div>
      ))}
      <div>
        <dt>
          <span className="mark-icon of-16">
            <ProfessionalFlag />
          </span>{' '}
          Professional
        </dt>
        <dd>{professional}</dd>
      </div>
    </dl>
  );
};

/** The same stations as on the drawing, in the order in which they are walked: the equal way to all of them. */
export const StationList = ({
  overview,
  stops,
  selected,
  onSelect,
}: {
  readonly overview: Overview;
  readonly stops: readonly Walked[];
  readonly selected: string | undefined;
  readonly onSelect: (id: StationId) => void;
}) => {
  const { id } = useDesk();
  const { marks } = overview;
  const groups: { head: string; items: Station[] }[] = [];
  for (const { station, group } of stops) {
    const last = groups[groups.length - 1];
    if (last?.head === group) last.items.push(station);
    else groups.push({ head: group, items: [station] });
  }
  if (stops.length === 0) return <p className="mut">No station has such a name.</p>;
  return (
    <>
      {groups.map((g, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the same place to stand may come twice in the walk
        <section key={`${g.head}${i}`} className="station-group">
          <h3 className="group-line">{upperFirst(g.head)}</h3>
          <ol>
            {g.items.map((s) => (
              <li key={s.id} className={selected === s.id ? 'chosen' : undefined}>
                <MarkIcon mark={marks[s.id] ?? 'not-seen'} size={16} />
                <a href={desk.place(id, s.id)} onFocus={() => onSelect(s.id)}>
                  {s.name}
                  <span className="unseen">, {MARK_WORD[marks[s.id] ?? 'not-seen'].toLowerCase()}</span>
                </a>
              </li>
            ))}
          </ol>
        </section>
      ))}
    </>
  );
};
