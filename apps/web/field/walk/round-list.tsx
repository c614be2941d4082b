import type { Rig } from '../../../../src/rig';
import type { Side, Station } from '../../../../src/terms';
import type { Overview, RoundStep, RoundView } from '../../session/session';
import { MarkSign } from '../../shared/mark-sign';
import { PageTitle } from '../../shared/page-title';
import { stationById, upperFirst, whereWords } from '../../shared/rig-words';
import { href } from '../../shared/route';
import { Cell, Frame, Primary } from '../frame';
import { leftWords } from './pace';
import { StitchLine } from './stitch-line';

const STATE: Readonly<Record<RoundStep['answered'], string>> = { no: 'to come', sound: 'sound', finding: 'finding', 'not-seen': 'not seen' };

type Group = { readonly name: string; readonly steps: readonly { readonly step: RoundStep; readonly index: number }[] };

/** Stops that stand together in walking order: what is reached from one spot. */
export const grouped = (steps: readonly RoundStep[]): readonly Group[] => {
  const groups: { readonly name: string; readonly steps: { readonly step: RoundStep; readonly index: number }[] }[] = [];
  for (const [index, step] of steps.entries()) {
    const last = groups.at(-1);
    if (last?.name === step.group) last.steps.push({ step, index });
    else groups.push({ name: step.group, steps: [{ step, index }] });
  }
  return groups;
};

/** All stops of the round in walking order: the equal of the drawing, and the way to any one of them. */
export const RoundList = ({ overview, round }: { readonly overview: Overview; readonly round: RoundView }) => {
  const { rig, record, marks } = overview;
  const done = round.steps.filter((s) => s.answered !== 'no').length;
  return (
    <Frame
      cells={[`${done} of ${round.steps.length}`, leftWords(round)]}
      back={{ to: href('rig', rig.id), name: 'Stop here, go on later' }}
      record={record}
      under={<StitchLine steps={round.steps} at={round.at} />}
      ruled
      dock={
        <>
          <Primary words={round.ended ? 'How the round ended' : 'Go on with the round'} to={href('rig', rig.id, 'round', round.ended ? 'finished' : 'now')} />
          <Cell wide to={href('rig', rig.id, 'round', 'finished')}>
            {round.ended ? 'Counts' : 'End the round here'}
          </Cell>
        </>
      }
    >
      <PageTitle id={`list ${round.id}`} title="All stops of the round">
        All stops
      </PageTitle>
      {grouped(round.steps).map((group) => (
        <section key={`${group.name} ${group.steps[0]?.index}`}>
          <h2>{upperFirst(group.name)}</h2>
          <ol className="rows" start={(group.steps[0]?.index ?? 0) + 1}>
            {group.steps.map(({ step, index }) => {
              const station = stationById(rig, step.station);
              const mark =
                step.answered === 'finding' ? (marks[step.station] ?? 'watch') : step.answered === 'sound' ? 'sound' : step.answered === 'not-seen' ? 'not-seen' : undefined;
              return (
                <li key={`${step.station} ${step.side}`}>
                  <a href={href('rig', rig.id, 'round', index + 1)} aria-current={index === round.at ? 'step' : undefined}>
                    {mark ? <MarkSign mark={mark} /> : <span />}
                    <span>
                      <b>
                        {index + 1} {station?.name ?? step.station}
                      </b>
                      {station ? whereBeside(rig, station, step.side) : ''}
                    </span>
                    <span className="end">{STATE[step.answered]}</span>
                  </a>
                </li>
              );
            })}
          </ol>
        </section>
      ))}
    </Frame>
  );
};

/** The group says from where; only what it does not say stands under the name. */
const whereBeside = (rig: Rig, station: Station, side: Side): string => {
  const words = whereWords(rig, station, side);
  return words.startsWith('From') ? '' : words;
};
