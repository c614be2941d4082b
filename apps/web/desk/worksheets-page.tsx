import type { AnyWorksheet } from '../../../src/terms';
import { worksheets } from '../../../src/worksheets';
import { useSettings } from '../shared/settings';
import { desk } from './paths';
import { WorksheetSheet } from './worksheet-sheet';

/** Every calculation in the house, to read and to try. */
export const WorksheetsPage = ({ worksheet }: { readonly worksheet: string | undefined }) => {
  const preferences = useSettings();
  return (
    <main className="desk-page worksheets-page" id="content">
      {worksheet === undefined ? (
        <header className="page-head">
          <h1>Every calculation, laid open</h1>
          <p className="lead">Put in your own figures. Nothing that is typed here is kept.</p>
        </header>
      ) : null}
      {/* What was opened comes first: on a phone the list of the others stands below it. */}
      <div className="columns worksheets-columns">
        {worksheet !== undefined && (
          <div className="worksheet-open">
            <WorksheetSheet key={worksheet} id={worksheet} preferences={preferences} />
          </div>
        )}
        <nav aria-label="Worksheets" className="worksheet-list">
          <h2 className={worksheet === undefined ? 'unseen' : ''}>Worksheets</h2>
          <ul className="rows">
            {(worksheets as readonly AnyWorksheet[]).map((w) => (
              <li key={w.id} className="row">
                <div className="row-body">
                  <h3>
                    <a href={desk.worksheets(w.id)} aria-current={w.id === worksheet ? 'page' : undefined}>
                      {w.title}
                    </a>
                  </h3>
                  {worksheet === undefined && <p className="mut">{w.tells}</p>}
                </div>
              </li>
            ))}
          </ul>
        </nav>
      </div>
    </main>
  );
};
