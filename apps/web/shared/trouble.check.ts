import { describe, expect, it } from 'vitest';
import { SPOKEN } from '../session/spoken-name';
import { saidOf } from './trouble';

/** No outside source: whatever went wrong is told in a sentence, never as a record of the program's own. */
describe('what an error says within a sentence', () => {
  it('is the store’s own words where it has them, without the full stop', () => {
    const error = new Error(JSON.stringify({ code: 'no-room', happened: 'There is no room left on this device.', safe: 'Everything kept before is safe.', todo: 'Make room.' }));
    error.name = SPOKEN;
    expect(saidOf(error)).toBe('There is no room left on this device');
  });

  it('is the message of any other error, and the text of what is none', () => {
    expect(saidOf(new Error('This archive is cut off.'))).toBe('This archive is cut off');
    expect(saidOf('gone')).toBe('gone');
  });
});
