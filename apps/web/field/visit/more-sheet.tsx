import { useState } from 'react';
import type { AnyKind, PhotoRef } from '../../../../src/terms';
import type { Preferences } from '../../../../src/units';
import { Over } from '../../shared/dialog';
import { Primary } from '../frame';
import { Ask } from './ask';
import type { Change } from './form';
import { PhotoButton } from './photo-pair';
import { answersOf, type Visit } from './visit';

type Props = {
  readonly kind: AnyKind;
  readonly visit: Visit;
  readonly asks: readonly AnyKind[];
  readonly also: readonly AnyKind[];
  readonly preferences: Preferences;
  readonly stationName: string;
  readonly change: (change: Change) => void;
  readonly note: (text: string) => void;
  readonly photo: (photo: PhotoRef) => unknown;
  readonly add: (kind: AnyKind) => void;
  readonly notSeen: () => void;
  readonly close: () => void;
};

/** What is asked only on request: the optional fields, a note, another photo, and another kind of observation at this place. */
export const MoreSheet = ({ kind, visit, also, preferences, stationName, change, note, photo, add, notSeen, close }: Props) => {
  const [live, setLive] = useState<string>();
  return (
    <Over label={`More about ${stationName}`} close={close}>
      <h2>{stationName}</h2>
      <label className="ask">
        <span className="label">Note</span>
        <textarea className="text-in" value={visit.note} maxLength={4000} onChange={(e) => note(e.currentTarget.value)} />
      </label>
      <PhotoButton words={visit.photos.length === 0 ? 'Photo' : `Another photo (${visit.photos.length} kept)`} name={stationName} add={photo} />
      <div className="group">
        <Ask
          kind={kind}
          answers={answersOf(visit, kind.id)}
          live={live}
          opened={undefined}
          last={undefined}
          defects={[]}
          preferences={preferences}
          all
          change={change}
          focus={setLive}
          open={() => undefined}
        />
      </div>
      {also.length > 0 && (
        <fieldset className="choices lines" aria-label="Record something else here">
          <p className="label">Record something else here</p>
          {also.map((k) => (
            <button key={k.id} type="button" className="press" onClick={() => add(k)}>
              <b>{k.title}</b>
            </button>
          ))}
        </fieldset>
      )}
      <button type="button" className="press" onClick={notSeen}>
        Could not see it after all
      </button>
      <Primary words="Done" second="back to the card" act={close} />
    </Over>
  );
};
