import { useState } from 'react';
import { couldNotSee } from '../../../../src/entries';
import type { Station } from '../../../../src/terms';
import type { Overview, RoundStep, RoundView } from '../../session/session';
import { useKeys } from '../../shared/keys';
import { MarkSign } from '../../shared/mark-sign';
import { PageTitle } from '../../shared/page-title';
import { whereWords } from '../../shared/rig-words';
import { Cell, Frame, Primary } from '../frame';
import { Locator } from '../locator';
import { leftWords } from '../walk/pace';
import { StitchLine } from '../walk/stitch-line';

type Props = {
  readonly overview: Overview;
  readonly round: RoundView;
  readonly index: number;
  readonly station: Station;
  readonly step: RoundStep;
  readonly last: string | undefined;
  readonly give: (reason: string, note: string) => Promise<void>;
  readonly later: () => void;
  readonly back: () => void;
};

const OTHER = 'other';

/** Not seen is not sound: the reason is asked, and the place stays on the list until someone looks. */
export const NotSeen = ({ overview, round, index, station, step, last, give, later, back }: Props) => {
  const [writing, setWriting] = useState(false);
  const [note, setNote] = useState('');
  const reasons = couldNotSee.fields.reason.options;
  useKeys({ Escape: back, ...Object.fromEntries(reasons.map((r, i) => [String(i + 1), () => (r.id === OTHER ? setWriting(true) : void give(r.id, ''))])) });
  return (
    <Frame
      cells={[`${index + 1} of ${round.steps.length}`, leftWords(round)]}
      record={overview.record}
      under={<StitchLine steps={round.steps} at={index} />}
      dock={
        writing ? (
          <>
            <Primary words="Keep this reason" second="it stays on the list as not seen" act={() => void give(OTHER, note.trim())} disabled={note.trim() === ''} />
            <Cell act={() => setWriting(false)}>Other reasons</Cell>
            <Cell act={back}>Back</Cell>
          </>
        ) : (
          <>
            <Primary words="Come back to it" second="it stays to be answered in this round" act={later} />
            <Cell act={() => setWriting(true)}>Another reason</Cell>
            <Cell act={back}>I can see it</Cell>
          </>
        )
      }
    >
      <div className="station-head">
        <div>
          <PageTitle id={`not seen ${step.station}`} title={`${station.name}, not seen`}>
            {station.name}
          </PageTitle>
          <p>{whereWords(overview.rig, station, step.side)}</p>
        </div>
        <Locator rig={overview.rig} station={station} side={step.side} />
      </div>
      <section className="verdict" aria-label="Not seen">
        <MarkSign mark="not-seen" />
        <div>
          <h2>Not seen. Why?</h2>
          <p>It stays open on the plan and on paper until someone looks. {last ? `Last seen ${last}.` : 'It has no answer yet.'}</p>
        </div>
      </section>
      {writing ? (
        <label className="ask low">
          <span className="label">The reason, in your words</span>
          <textarea className="text-in" value={note} onChange={(e) => setNote(e.currentTarget.value)} />
        </label>
      ) : (
        <div className="choices lines low">
          {reasons
            .filter((r) => r.id !== OTHER)
            .map((r) => (
              <button key={r.id} type="button" className="press" onClick={() => void give(r.id, '')}>
                <b>{r.word}</b>
                {'line' in r ? r.line : ''}
              </button>
            ))}
        </div>
      )}
    </Frame>
  );
};
