import { isOpen, shownAs } from '../../../src/plan';
import type { Rig } from '../../../src/rig';
import { MARK_WORD } from '../../../src/terms';
import type { Overview } from '../session/session';
import { go } from '../shared/route';
import { useSettings } from '../shared/settings';
import { findingStation, placeWords, stationById, stationWords, useDesk } from './desk';
import { thingOf } from './drawings';
import { MarkIcon } from './mark-icon';
import { desk } from './paths';

export const useDrawingTheme = (): 'desk' | 'night' => (useSettings().theme === 'night' ? 'night' : 'desk');

export const openThing = (overview: Overview, id: string): void => {
  const { rig, plan } = overview;
  const thing = thingOf(id);
  if (plan.findings.some((f) => f.id === thing)) go(desk.finding(rig.id, thing));
  else go(desk.place(rig.id, thing));
};

/** The other sheets of the same rig: underside, and the inside of each face. */
export const OtherSheets = ({ rig, here }: { readonly rig: Rig; readonly here: string }) => (
  <nav className="other-sheets" aria-label="Other sheets">
    {here !== 'sheet' && <a href={desk.sheet(rig.id)}>Outside, unfolded</a>}
    {here !== 'underside' && rig.faces.some((f) => f.id === 'under') && <a href={desk.underside(rig.id)}>Underside</a>}
    {rig.faces
      .filter((f) => f.id !== 'tongue' && here !== f.id)
      .map((f) => (
        <a key={f.id} href={desk.inside(rig.id, f.id)}>
          {f.inside_name}
        </a>
      ))}
  </nav>
);

/** One line below the drawing about what is chosen on it. */
export const Selected = ({ overview, selected }: { readonly overview: Overview; readonly selected: string | undefined }) => {
  const { id } = useDesk();
  const { rig, plan, marks } = overview;
  const thing = selected === undefined ? undefined : thingOf(selected);
  const finding = plan.findings.find((f) => f.id === thing);
  const station = stationById(rig, finding ? findingStation(finding) : thing);
  const here = finding ?? plan.findings.find((f) => isOpen(f) && station !== undefined && findingStation(f) === station.id);
  return (
    <p className="selected-line" aria-live="polite">
      {!station && !finding && <span className="mut">Choose a station on the drawing or in the list. Arrow keys go from one to the next.</span>}
      {station && (
        <>
          <MarkIcon mark={marks[station.id] ?? 'not-seen'} size={16} /> <b>{stationWords(rig, station)}</b>.{' '}
          {here ? `${here.title}, ${MARK_WORD[shownAs(here)].toLowerCase()}. ` : `${MARK_WORD[marks[station.id] ?? 'not-seen']}. `}
          {here && <a href={desk.finding(id, here.id)}>Open the finding</a>} <a href={desk.place(id, station.id)}>Open the station</a>{' '}
          <a href={desk.add(id, { station: station.id })}>New entry here</a>
        </>
      )}
      {!station && finding && (
        <>
          <b>{placeWords(rig, finding.place)}</b>. {finding.title}. <a href={desk.finding(id, finding.id)}>Open the finding</a>
        </>
      )}
    </p>
  );
};
