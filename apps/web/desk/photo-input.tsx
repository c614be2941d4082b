import { useEffect, useState } from 'react';
import type { PhotoRef } from '../../../src/terms';
import { useSettings } from '../shared/settings';
import { saidOf } from '../shared/trouble';
import { useDesk } from './desk';
import { bytesWords } from './files';

/** A kept photograph by its hash. Says so in words when it is not on this device or cannot be shown. */
export const Photo = ({ hash, words }: { readonly hash: string; readonly words: string }) => {
  const { session } = useDesk();
  const [address, setAddress] = useState<string>();
  const [missing, setMissing] = useState<string>();
  useEffect(() => {
    let made: string | undefined;
    let gone = false;
    session.photo(hash).then(
      (blob) => {
        if (gone) return;
        if (!blob) setMissing('This photograph is not on this device.');
        else {
          made = URL.createObjectURL(blob);
          setAddress(made);
        }
      },
      () => setMissing('This photograph could not be read. Its entry is safe.'),
    );
    return () => {
      gone = true;
      if (made !== undefined) URL.revokeObjectURL(made);
    };
  }, [session, hash]);
  if (missing !== undefined) return <p className="photo-missing">{missing}</p>;
  return address === undefined ? (
    <span className="photo-wait" />
  ) : (
    <img className="photo" src={address} alt={words} onError={() => setMissing('This browser cannot show the photograph. It is kept as it came.')} />
  );
};

/** Adds photographs to an entry. Each is kept as soon as it is chosen; the entry names it. */
export const PhotoInput = ({ photos, onChange }: { readonly photos: readonly PhotoRef[]; readonly onChange: (photos: readonly PhotoRef[]) => void }) => {
  const { session } = useDesk();
  const { photos: keeping } = useSettings();
  const [busy, setBusy] = useState(false);
  const [wrong, setWrong] = useState<string>();

  const take = async (files: FileList | null) => {
    if (!files || files.length === 0) return;
    setBusy(true);
    setWrong(undefined);
    const kept: PhotoRef[] = [];
    for (const file of files) {
      try {
        kept.push(await session.keepPhoto(new Uint8Array(await file.arrayBuffer()), file.type || 'application/octet-stream', keeping === 'reduced'));
      } catch (cause) {
        setWrong(`${file.name} was not kept. ${saidOf(cause)}. Everything else is safe.`);
      }
    }
    onChange([...photos, ...kept]);
    setBusy(false);
  };

  return (
    <div className="field-row">
      <label htmlFor="entry-photos">
        Photographs <span className="mut">if you have some</span>
      </label>
      <input id="entry-photos" type="file" accept="image/*" multiple disabled={busy} onChange={(e) => void take(e.target.files)} />
      {photos.length > 0 && (
        <ul className="photo-strip">
          {photos.map((p) => (
            <li key={p.hash}>
              <Photo hash={p.hash} words={`Photograph of ${bytesWords(p.size_bytes)}`} />
              <button type="button" className="link" onClick={() => onChange(photos.filter((o) => o.hash !== p.hash))}>
                leave it out
              </button>
            </li>
          ))}
        </ul>
      )}
      {wrong !== undefined && (
        <p className="refusal" role="alert">
          {wrong}
        </p>
      )}
    </div>
  );
};
