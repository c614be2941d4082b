import { describe, expect, it } from 'vitest';
import { href, parseRoute, withQuery } from './route';

/** Our own addresses: what is written must be read back exactly, whatever characters a name holds. */
describe('addresses within the page', () => {
  it('reads back what it wrote', () => {
    const parts = ['rig', '0190-ab', 'station', 'curb/window 2 #é%'];
    expect(parseRoute(href(...parts)).parts).toEqual(parts);
    expect(parseRoute(withQuery(href(...parts), { side: 'inside', on: '2026-09-19' }))).toMatchObject({ parts, query: { side: 'inside', on: '2026-09-19' } });
  });
  it('takes the empty address and a broken escape without falling over', () => {
    expect(parseRoute('').parts).toEqual([]);
    expect(parseRoute('#/rig/%E0%A4%A').parts).toEqual(['rig', '%E0%A4%A']);
  });
});
