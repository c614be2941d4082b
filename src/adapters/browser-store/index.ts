import type { LogbookStore, PhotoStore } from '../../logbook';
import type { RigId } from '../../terms';
import type { Trouble } from '../trouble';
import { openChanges } from './changes';
import { browserCopies, type Copies } from './copies';
import { openHandle } from './database';
import { browserDrafts, type Drafts } from './drafts';
import { browserLines, type LinesOptions } from './lines';
import { browserPhotos } from './photos';

export type { Copied, Copies } from './copies';
export type { Drafts } from './drafts';
export { type Room, room } from './room';

/** All that a browser keeps for this product. */
export type BrowserStore = {
  readonly logbooks: LogbookStore;
  readonly photos: PhotoStore;
  readonly drafts: Drafts;
  readonly copies: Copies;
  /** What people should know about the storage now; undefined when all is well. */
  readonly trouble: () => Trouble | undefined;
  /** Calls back when a rig's logbook has grown, here or in another window. */
  readonly watch: (changed: (rig: RigId) => void) => () => void;
  readonly close: () => void;
};

export type BrowserStoreOptions = LinesOptions & {
  /** The database's name; one for all, but for checks. */
  readonly name?: string;
};

/** Opens nothing before the first use. Errors that the browser causes carry a `trouble`: see `troubleOf`. */
export const browserStore = ({ name = 'seamward', ...options }: BrowserStoreOptions): BrowserStore => {
  let trouble: Trouble | undefined;
  const tell = (now: Trouble | undefined): void => {
    trouble = now;
  };
  const handle = openHandle(name, tell);
  const changes = openChanges(name);
  return {
    logbooks: browserLines(handle, changes, options, tell),
    photos: browserPhotos(handle),
    drafts: browserDrafts(handle),
    copies: browserCopies(handle),
    trouble: () => trouble,
    watch: changes.watch,
    close: () => {
      handle.close();
      changes.close();
    },
  };
};
