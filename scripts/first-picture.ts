import { writeFileSync } from 'node:fs';
import { firstPicture } from '../apps/web/field/first-picture';

/** Writes the picture of the first screen. Run it after a change of drawing or of the typical travel trailer; a check compares the two. */
writeFileSync(new URL('../apps/web/public/first-picture.svg', import.meta.url), firstPicture());
