import './styles/frame.css';
import './styles/parts.css';
import './styles/sheet.css';
import './styles/pages.css';
import './styles/forms.css';
import './styles/worksheet.css';
import './styles/water.css';
import './styles/narrow.css';
import { href, type Route } from '../shared/route';
import { AddPage, CorrectPage } from './add-page';
import { CopiesPage } from './copies-page';
import { DescribePage } from './describe-page';
import { FindingPage } from './finding-page';
import { RigDesk, ToolDesk } from './frame';
import { LogbookScreen } from './logbook-page';
import { InsidePage, UndersidePage } from './one-face-page';
import { PlacePage } from './place-page';
import { PlanPage } from './plan-page';
import { PrintPage } from './print-page';
import { SettingsPage } from './settings-page';
import { RigSheetPage } from './sheet-page';
import { SlidesPage } from './slides-page';
import { WaterPage } from './water/water-page';
import { WorksheetsPage } from './worksheets-page';

/** The screens for the table. What stands after `#/rig/<id>/` chooses the page. */
const Desk = ({ route }: { readonly route: Route }) => {
  const [head, rig, page, what] = route.parts;
  if (head === 'worksheets')
    return (
      <ToolDesk here="worksheets">
        <WorksheetsPage worksheet={rig} />
      </ToolDesk>
    );
  if (head !== 'rig' || rig === undefined)
    return (
      <ToolDesk here="settings">
        <SettingsPage />
      </ToolDesk>
    );
  return (
    <RigDesk rig={rig} page={page ?? 'sheet'}>
      <RigPage page={page ?? 'sheet'} what={what} route={route} />
    </RigDesk>
  );
};

const RigPage = ({ page, what, route }: { readonly page: string; readonly what: string | undefined; readonly route: Route }) => {
  switch (page) {
    case 'sheet':
      return <RigSheetPage />;
    case 'underside':
      return <UndersidePage />;
    case 'inside':
      return <InsidePage face={what} />;
    case 'place':
    case 'station':
      return <PlacePage key={what} station={what ?? ''} />;
    case 'finding':
      return <FindingPage key={what} finding={what ?? ''} />;
    case 'plan':
      return <PlanPage />;
    case 'water':
      return <WaterPage what={what} />;
    case 'describe':
      return <DescribePage station={what} />;
    case 'slides':
      return <SlidesPage />;
    case 'logbook':
      return <LogbookScreen place={route.query['place']} />;
    case 'add':
      return <AddPage key={route.text} query={route.query} />;
    case 'correct':
      return <CorrectPage key={what} entry={what ?? ''} />;
    case 'copies':
      return <CopiesPage />;
    case 'print':
      return <PrintPage what={what} />;
    default:
      return (
        <main className="desk-page" id="content">
          <h1>There is no such page</h1>
          <p className="lead">The address names “{page}”, which this version does not know. Nothing was changed.</p>
          <p className="buttons">
            <a className="button primary" href={href('rigs')}>
              Back to the rigs
            </a>
          </p>
        </main>
      );
  }
};

export default Desk;
