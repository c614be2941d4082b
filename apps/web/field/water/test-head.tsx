import type { Station } from '../../../../src/terms';
import type { Overview } from '../../session/session';
import { PageTitle } from '../../shared/page-title';
import { whereWords } from '../../shared/rig-words';
import { Locator } from '../locator';

/** What is tested, and where on the rig it is. */
export const TestHead = ({ overview, station, title }: { readonly overview: Overview; readonly station: Station; readonly title: string }) => (
  <div className="station-head">
    <div>
      <PageTitle id={`test ${title} ${station.id}`} title={`${title}: ${station.name}`}>
        {station.name}
      </PageTitle>
      <p>{whereWords(overview.rig, station, 'outside')}</p>
    </div>
    <Locator rig={overview.rig} station={station} side="outside" />
  </div>
);
