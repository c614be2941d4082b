import { expose } from 'comlink';
import { browserStore, room } from '../../../src/adapters/browser-store';
import { kindById, refuseEntry } from '../../../src/entries';
import { uuidV7 } from '../../../src/logbook';
import { nowText } from '../shared/clock';
import { keeper } from './keeper';
import { lazyFiles } from './lazy-files';
import { spoken } from './spoken-trouble';

/** The worker of one tab: the browser's store below, the session above. Heavy parts are loaded when they are first wanted. */
const random = (bytes: number): Uint8Array => crypto.getRandomValues(new Uint8Array(bytes));
const stamp = { now: () => nowText(), random };
const opened = browserStore({ stamp, check: (entry) => refuseEntry(kindById, entry) });

/** `<rig>/<name>`: what belongs to a rig goes with it when it is forgotten. Before the slash nothing stands for the whole device. */
const split = (name: string): readonly [rig: string, name: string] => {
  const at = name.indexOf('/');
  return [name.slice(0, Math.max(0, at)), name.slice(at + 1)];
};

const session = keeper({
  store: opened.logbooks,
  photoStore: opened.photos,
  drafts: {
    get: (name) => opened.drafts.load(...split(name)),
    put: (name, value) => (value === undefined ? opened.drafts.drop(...split(name)) : opened.drafts.save(...split(name), value)),
  },
  copies: opened.copies,
  files: lazyFiles,
  photos: { keep: async (bytes, reduce) => (await import('./photo-keeping')).keepPhoto(opened.photos, bytes, reduce) },
  now: stamp.now,
  newId: () => uuidV7(Date.now(), random(10)),
  watch: opened.watch,
  trouble: opened.trouble,
  storage: room,
});

expose(spoken(session));
