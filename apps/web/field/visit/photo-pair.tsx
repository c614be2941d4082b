import { useState } from 'react';
import type { PhotoRef } from '../../../../src/terms';
import { usePhoto, useSession } from '../../session/use-session';
import { announce } from '../../shared/announce';
import { useSettings } from '../../shared/settings';
import { CameraSign } from '../../shared/signs';
import { reportTrouble } from '../../shared/trouble';

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
        {lastPhoto && <img src={lastPhoto} alt={`${name}, ${last?.day}`} />}
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
          <img src={newest} alt={`${name}, now`} />
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

/** Opens the camera. The draft is on disk already: the camera may cost the page its life. */
export const PhotoButton = ({ words, name, add }: { readonly words: string; readonly name: string; readonly add: (photo: PhotoRef) => unknown }) => {
  const session = useSession();
  const { photos } = useSettings();
  const [busy, setBusy] = useState(false);

  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setBusy(true);
    try {
      const bytes = new Uint8Array(await file.arrayBuffer());
      await add(await session.keepPhoto(bytes, file.type || 'application/octet-stream', photos === 'reduced'));
      announce(`Photo of ${name} is kept.`);
    } catch (cause) {
      reportTrouble({
        key: 'photo',
        title: 'A photo was not kept',
        happened: `The photo at ${name} could not be kept: ${cause instanceof Error ? cause.message : String(cause)}`,
        safe: 'Your answers are safe without it. The picture on the phone was not changed.',
        todo: 'Go on without it, or make room and take it again. In the settings you can choose that photos are kept smaller.',
      });
    } finally {
      setBusy(false);
    }
  };

  return (
    <label className="shoot">
      <CameraSign />
      <span>{busy ? 'Keeping it' : words}</span>
      <input type="file" accept="image/*" capture="environment" disabled={busy} onChange={(e) => void take(e.currentTarget.files?.[0])} aria-label={`${words} of ${name}`} />
    </label>
  );
};
