import { pictureForPaper } from '../../../src/adapters/photo';
import { digestOf, type Line, type PhotoStore, type State } from '../../../src/logbook';
import { conditionRecord, photosToPrint, planSheet, walkSheet } from '../../../src/report';
import { type Rig, walkingOrder } from '../../../src/rig';
import type { Hash } from '../../../src/terms';
import type { Answer } from './planning';
import type { PaperWish } from './session';

/**
 * A sheet of paper as HTML that stands alone: what to walk by, what was found, what is to be done.
 * Its title block bears the digest of the very logbook it was made from, as the closing line of a copy and `verify` say it.
 */
export const paper = async (
  state: State<Rig>,
  lines: readonly Line[],
  { plan, marks }: Pick<Answer, 'plan' | 'marks'>,
  { what, paper: size, preferences, by, form = 'full' }: PaperWish,
  photos: PhotoStore,
): Promise<string> => {
  const rig = state.subject;
  const options = { paper: size, on: plan.on, preferences, digest: digestOf(lines.map((l) => l.hash)), ...(by === undefined ? {} : { by }) };
  if (what === 'plan') return planSheet(rig, plan, options);
  if (what === 'condition-record') return conditionRecord(rig, state, plan, { ...options, marks, photos: await picturesOf(photosToPrint(state, plan), photos) });
  return walkSheet(rig, walkingOrder(rig, { form, inside: [] }), plan, { ...options, state, form });
};

/** Small copies of the photographs that are here and that this browser can decode; the record says where the others are. */
const picturesOf = async (hashes: readonly Hash[], photos: PhotoStore): Promise<Readonly<Record<Hash, string>>> => {
  const pictures: Record<Hash, string> = {};
  for (const hash of hashes) {
    const found = await photos.get(hash);
    const picture = found && (await pictureForPaper(found.bytes, found.media_type));
    if (picture !== undefined) pictures[hash] = picture;
  }
  return pictures;
};
