import { useEffect, useState } from 'react';
import type { RoundForm } from '../../../../src/entries';
import { roundBegun } from '../../../../src/entries';
import type { Stop } from '../../../../src/rig';
import { WHOLE_RIG } from '../../../../src/terms';
import { showDay } from '../../../../src/units';
import type { Overview } from '../../session/session';
import { useSession } from '../../session/use-session';
import { announce } from '../../shared/announce';
import { nowText } from '../../shared/clock';
import { PageTitle } from '../../shared/page-title';
import { go, href } from '../../shared/route';
import { byOf, useChangeSettings, useSettings } from '../../shared/settings';
import { keepTrouble, reportTrouble } from '../../shared/trouble';
import { Cell, Frame, Primary } from '../frame';
import { askPersist } from '../persist';
import { ManyField } from '../visit/many-field';

/** Which round, of what, and why. One press begins it. */
export const RoundStart = ({ overview }: { readonly overview: Overview }) => {
  const { rig, record, plan } = overview;
  const session = useSession();
  const settings = useSettings();
  const change = useChangeSettings();
  const [form, setForm] = useState<RoundForm>('full');
  const [faces, setFaces] = useState<readonly string[]>([]);
  const [beginning, setBeginning] = useState(false);
  const [stops, setStops] = useState<readonly Stop[]>([]);
  const chosen = faces.join(' ');
  useEffect(() => {
    let gone = false;
    session.stops(rig.id, form, form === 'partial' ? chosen.split(' ') : undefined).then(
      (found) => !gone && setStops(found),
      () => undefined,
    );
    return () => {
      gone = true;
    };
  }, [session, rig.id, form, chosen]);
  const options = roundBegun.fields.form.options;

  const begin = async (): Promise<void> => {
    setBeginning(true);
    try {
      await session.keep([
        {
          rig: rig.id,
          kind: roundBegun.id,
          version: roundBegun.version,
          observed_at: nowText(),
          by: byOf(settings),
          place: WHOLE_RIG,
          body: { form, steps: stops.map(({ station, side }) => ({ station, side })) },
        },
      ]);
      announce('The round has begun.');
      void askPersist();
      go(href('rig', rig.id, 'round', 'now'));
    } catch (cause) {
      reportTrouble(keepTrouble(cause));
    } finally {
      setBeginning(false);
    }
  };

  return (
    <Frame
      cells={['Round']}
      back={{ to: href('rig', rig.id), name: 'Back to the rig' }}
      record={record}
      dock={
        <>
          <Primary
            words="Begin the round"
            second={stops.length === 0 ? (form === 'partial' ? 'choose a side first' : 'one moment') : `${stops.length} stops, from the ground first`}
            act={() => void begin()}
            disabled={beginning || stops.length === 0}
          />
          <Cell to={href('rig', rig.id)}>Not now</Cell>
          <Cell to={href('rig', rig.id, 'print')}>Paper instead</Cell>
        </>
      }
    >
      <PageTitle id="start" title="Begin a round">
        Which round?
      </PageTitle>
      <p>{plan.next_round ? `The next full round is due ${showDay(plan.next_round.on)}. ${plan.next_round.because}` : 'A full round looks at every place once.'}</p>
      <div className="low group">
        <fieldset className="choices lines" aria-label="Which round">
          {options.map((o) => (
            <button key={o.id} type="button" className="press" aria-pressed={o.id === form} onClick={() => setForm(o.id)}>
              <b>{o.word}</b>
              {o.line}
            </button>
          ))}
        </fieldset>
        {form === 'partial' && (
          <ManyField
            label="Which sides"
            options={rig.faces.map((f) => ({ id: f.id, word: f.name }))}
            chosen={faces}
            toggle={(id) => setFaces(faces.includes(id) ? faces.filter((f) => f !== id) : [...faces, id])}
          />
        )}
        <label className="ask">
          <span className="label">
            Who walks<small>, written beside each answer</small>
          </span>
          <input className="text-in" value={settings.by} placeholder={byOf(settings)} maxLength={80} autoComplete="name" onChange={(e) => change({ by: e.currentTarget.value })} />
        </label>
      </div>
    </Frame>
  );
};
