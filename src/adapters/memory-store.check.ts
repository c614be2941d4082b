import { uuidV7 } from '../logbook';
import { emptyShelf, memoryPhotos, memoryStore } from './memory-store';
import { acceptLogbookStore, acceptPhotoStore } from './store-acceptance';

/** The store without a disk, against what every store promises. */
acceptLogbookStore('memory', async (stamp, check) => {
  const shelf = emptyShelf();
  const options = { stamp, shelf, device: uuidV7(0, stamp.random(10)), ...(check && { check }) };
  return { store: memoryStore(options), again: async () => memoryStore(options) };
});
acceptPhotoStore('memory', async () => memoryPhotos());
