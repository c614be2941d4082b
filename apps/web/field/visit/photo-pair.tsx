import { useState } from 'react';
import type { PhotoRef } from '../../../../src/terms';
import { usePhoto, useSession } from '../../session/use-session';
import { announce } from '../../shared/announce';
import { Over } from '../../shared/dialog';
import { useSettings } from '../../shared/settings';
import { CameraSign } from '../../shared/signs';
import { reportTrouble, saidOf, type Trouble, troubleOver } from '../../shared/trouble';
import { Primary } from '../frame';

type Last = { readonly day: string; readonly words: string; readonly photo: string | undefined };
type Props = {
  readonly last: Last | undefined;
  readonly photos: readonly PhotoRef[];
  readonly name: string;
  readonly add: (photo: PhotoRef) => unknown;
  /** The card may have no room for pictures: then the button is one row. */
  readonly word?: string;
};

/** Last time beside now. The photograph is optional; the answer never waits for it. */
export const PhotoPair = ({ last, photos, name, add, word = 'Photo' }: Props) => {
  const lastPhoto = usePhoto(last?.photo);
  const newest = usePhoto(photos.at(-1)?.hash);
  return (
    <div className="pair">
      <figure>
        {lastPhoto && <Photo src={lastPhoto} words={`${name}, ${last?.day}`} />}
        <figcaption>
          {last ? (
            <>
              {last.day} <b>{last.words}</b>
            </>
          ) : (
            <>No earlier answer here</>
          )}
        </figcaption>
      </figure>
      {newest ? (
        <figure>
          <Photo src={newest} words={`${name}, now`} />
          <figcaption>
            <b>Now{photos.length > 1 ? `, ${photos.length} photos` : ''}</b>
          </figcaption>
        </figure>
      ) : (
        <PhotoButton words={last?.photo ? `${word}, same view` : word} name={name} add={add} />
      )}
    </div>
  );
};

/** A kept photograph. Some kinds (HEIC) are kept whole and cannot be shown by every browser: then words stand in its place. */
const Photo = ({ src, words }: { readonly src: string; readonly words: string }) => {
  const [dark, setDark] = useState(false);
  return dark ? <p className="no-preview">Kept, but this browser cannot show it</p> : <img src={src} alt={words} onError={() => setDark(true)} />;
};

/** Opens the camera. The draft is on disk already: the camera may cost the page its life. */
export const PhotoButton = ({ words, name, add }: { readonly words: string; readonly name: string; readonly add: (photo: PhotoRef) => unknown }) => {
  const session = useSession();
  const { photos } = useSettings();
  const [busy, setBusy] = useState(false);

  const [asked, setAsked] = useState<{ readonly file: File; readonly question: string }>();

  const take = async (file: File | undefined, reduce = photos === 'reduced', sure = reduce): Promise<void> => {
    if (!file) return;
    setBusy(true);
    setAsked(undefined);
    try {
      const bytes = new Uint8Array(await file.arrayBuffer());
      const question = sure ? undefined : (await import('../../../../src/adapters/photo')).photoQuestion(bytes);
      if (question !== undefined) return setAsked({ file, question });
      await add(await session.keepPhoto(bytes, file.type || 'application/octet-stream', reduce));
      troubleOver('photo');
      announce(`Photo of ${name} is kept.`);
    } catch (cause) {
      reportTrouble(photoTrouble(name, cause));
    } finally {
      setBusy(false);
    }
  };

  return (
    <>
      <label className="shoot">
        <CameraSign />
        <span>{busy ? 'Keeping it' : words}</span>
        <input type="file" accept="image/*" capture="environment" disabled={busy} onChange={(e) => void take(e.currentTarget.files?.[0])} aria-label={`${words} of ${name}`} />
      </label>
      {asked && (
        <Over label="A large photo" close={() => setAsked(undefined)}>
          <h2>{asked.question}</h2>
          <Primary words="Keep a smaller copy" second="the original stays on the phone; its hash stays in the entry" act={() => void take(asked.file, true, true)} />
          <button type="button" className="press" onClick={() => void take(asked.file, false, true)}>
            Keep it as it is
          </button>
        </Over>
      )}
    </>
  );
};

const photoTrouble = (name: string, cause: unknown): Trouble => ({
  key: 'photo',
  title: 'A photo was not kept',
  happened: `The photo at ${name} could not be kept: ${saidOf(cause)}.`,
  safe: 'Your answers are safe without it. The picture on the phone was not changed.',
  todo: 'Go on without it, or make room and take it again. In the settings you can choose that photos are kept smaller.',
});
