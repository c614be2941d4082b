import { kindById } from '../../../../src/entries';
import type { Overview } from '../../session/session';
import { PageTitle } from '../../shared/page-title';
import { href, useRoute, withQuery } from '../../shared/route';
import { Frame, Primary } from '../frame';

/** What is written down beside the readings, each with a word on what it is good for. */
const KINDS: readonly (readonly [kind: string, line: string])[] = [
  ['rain-fell', 'tests what was sealed'],
  ['leak-clue', 'points at where it comes in'],
  ['other-cause', 'ruled out, or it is this'],
  ['air-and-skin', 'tells sweat from a leak'],
];

/** Forms of the table: they ask for a span of days, or are filled in once. */
const AT_THE_TABLE: readonly (readonly [kind: string, line: string])[] = [
  ['lived-air', 'what sound wood takes on by itself'],
  ['inside-signs', 'a stain, smell, mould or soft place'],
  ['meter', 'its scale, table and correction'],
];

/** What else can be told about water. */
export const NoteList = ({ overview }: { readonly overview: Overview }) => {
  const { rig, record } = overview;
  const { query } = useRoute();
  const leak = query['leak'];
  const back = href('rig', rig.id, 'water');
  const row = (address: string, kind: string, line: string) => (
    <li key={kind}>
      <a className="wide-row" href={address}>
        <span>
          <b>{kindById(kind)?.title}</b>
          {line}
        </span>
      </a>
    </li>
  );
  return (
    <Frame cells={['Water']} back={{ to: back, name: 'Back to water' }} record={record} dock={<Primary words="Back to water" to={back} />}>
      <PageTitle id="water notes" title="Write down, about water">
        What did you see or do?
      </PageTitle>
      <ul className="rows">{KINDS.map(([kind, line]) => row(withQuery(href('rig', rig.id, 'water-note', kind), leak === undefined ? {} : { leak }), kind, line))}</ul>
      <h2>Longer forms</h2>
      <ul className="rows">{AT_THE_TABLE.map(([kind, line]) => row(withQuery(href('rig', rig.id, 'add'), { kind }), kind, line))}</ul>
    </Frame>
  );
};
