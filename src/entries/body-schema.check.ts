import { describe, expect, it, vi } from 'vitest';

/** Against the content policy of the page, which forbids program text made at run time: the small form of the schema library never tries it, the full one does. */
describe('shapes', () => {
  it('are built and read without making program text', async () => {
    const made = vi.fn();
    vi.stubGlobal(
      'Function',
      new Proxy(Function, {
        construct: (target, given, as) => {
          made(...given);
          return Reflect.construct(target, given, as);
        },
      }),
    );
    vi.resetModules();
    const { kindById, readBody } = await import('.');
    const grade = kindById('seal-grade');
    expect(grade && readBody(grade, { grade: 'S4', defects: ['edge-lifts'] }).ok).toBe(true);
    expect(grade && readBody(grade, { grade: 'S9' }).ok).toBe(false);
    vi.unstubAllGlobals();
    expect(made.mock.calls).toEqual([]);
  });
});
