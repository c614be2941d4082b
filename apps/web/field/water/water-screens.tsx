import '../styles/water.css';
import type { Side } from '../../../../src/terms';
import type { Overview } from '../../session/session';
import { PageTitle } from '../../shared/page-title';
import { href, useRoute } from '../../shared/route';
import { Frame, Primary } from '../frame';
import { MeterStart } from './meter-start';
import { MeterWall } from './meter-wall';
import { NoteForm } from './note-form';
import { NoteList } from './note-list';
import { TestScreen } from './test-screen';
import { leakOf } from './water-of';
import { MapScreen, TrendScreen } from './water-parts';
import { WaterScreen } from './water-screen';

type Props = { readonly overview: Overview; readonly page: string; readonly more: readonly string[] };

const SIDES: readonly Side[] = ['inside', 'outside'];

/** The screens about water, loaded when the first of them is wanted. */
const WaterScreens = ({ overview, page, more: [first, second] }: Props) => {
  if (page === 'water-test') return <TestScreen key={first} overview={overview} leak={first ?? ''} />;
  if (page === 'water-note') return first === undefined ? <NoteList overview={overview} /> : <NoteForm overview={overview} kind={first} />;
  if (page !== 'meter') return <Water overview={overview} what={first} />;
  if (first === undefined) return <MeterStart overview={overview} />;
  const face = overview.rig.faces.find((f) => f.id === first);
  const side = SIDES.find((s) => s === second) ?? 'inside';
  return face ? <MeterWall key={`${face.id} ${side}`} overview={overview} face={face} side={side} /> : <NoWall overview={overview} />;
};

export default WaterScreens;

/** A leak through time, the map of a wall, or all that is known; an address of something that is gone shows all. */
const Water = ({ overview, what }: { readonly overview: Overview; readonly what: string | undefined }) => {
  const { water } = overview.plan;
  const { query } = useRoute();
  const leak = leakOf(water, what);
  if (leak) return <TrendScreen key={leak.id} overview={overview} leak={leak} />;
  const panel = water.panels.find((p) => p.id === what);
  const face = overview.rig.faces.find((f) => f.id === panel?.face);
  return panel && face ? <MapScreen key={panel.id} overview={overview} panel={panel} face={face} leak={leakOf(water, query['leak'])} /> : <WaterScreen overview={overview} />;
};

const NoWall = ({ overview }: { readonly overview: Overview }) => (
  <Frame cells={['Meter a wall']} record={overview.record} dock={<Primary words="Choose a wall" to={href('rig', overview.rig.id, 'meter')} />}>
    <PageTitle id="no wall" title="No such wall">
      This rig has no such wall
    </PageTitle>
    <p>It may have been taken out since the address was written. Nothing was changed.</p>
  </Frame>
);
