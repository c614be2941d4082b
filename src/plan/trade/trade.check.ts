// The trade tables hold together: every id that is named anywhere exists, every row leans on a source that exists, counts are those of the
// tables as compiled (74 looks, 241 defects, 88 remedies, 29 escalations, 33 cautions, 45 service items, 38 seasonal items), and no maker is named.
import { describe, expect, it } from 'vitest';
import { MARKS } from '../../terms';
import { firstProofDays } from '../recheck';
import { caution, cautions, defect, defects, defectsOf, defectTitle, escalations, isA, look, looks, looksChain, remedies, remedy, seasons, service, sourceOf, sources } from '.';
import { ownRemedies } from './own-remedies';

const rows = [...looks, ...defects, ...remedies, ...cautions, ...service, ...seasons];

describe('the trade tables', () => {
  it('have as many rows as were compiled', () => {
    expect([looks, defects, remedies, escalations, cautions, service, seasons].map((t) => t.length)).toEqual([74, 241, 88 + ownRemedies.length, 29, 33, 45, 38]);
  });

  it('have each id once', () => {
    for (const table of [looks, defects, remedies, cautions, service, seasons]) expect(new Set(table.map((r) => r.id)).size).toBe(table.length);
  });

  it('name only defects, remedies, cautions and kinds that exist', () => {
    const missing: string[] = [];
    const want = (what: string, id: string, found: unknown): void => {
      if (found === undefined) missing.push(`${what} ${id}`);
    };
    for (const l of looks) {
      for (const id of l.defects) want(`look ${l.id}: defect`, id, defect(id));
      if (l.also !== undefined) want(`look ${l.id}: kind`, l.also, look(l.also));
    }
    for (const d of defects) {
      want(`defect ${d.id}: kind`, d.id, look(d.id.split('.')[0] ?? ''));
      for (const id of d.remedies) want(`defect ${d.id}: remedy`, id, remedy(id));
    }
    for (const r of remedies) {
      for (const id of r.for) want(`remedy ${r.id}: defect`, id, defect(id));
      for (const id of r.cautions) want(`remedy ${r.id}: caution`, id, caution(id));
    }
    for (const e of escalations) {
      want('escalation: defect', e.defect, defect(e.defect));
      for (const id of e.if?.defects ?? []) want(`escalation of ${e.defect}: defect`, id, defect(id));
    }
    for (const s of service) for (const id of s.kinds) want(`service ${s.id}: kind`, id, look(id));
    for (const s of seasons) {
      for (const id of s.kinds) if (id !== 'all') want(`season ${s.id}: kind`, id, look(id));
      for (const id of s.cautions) want(`season ${s.id}: caution`, id, caution(id));
    }
    expect(missing).toEqual([]);
  });

  it('lean on sources that exist, each row on at least one, and use every source', () => {
    for (const row of rows) {
      expect(row.sources.length, row.id).toBeGreaterThan(0);
      for (const [key] of row.sources) expect(() => sourceOf(key), `${row.id}: ${key}`).not.toThrow();
    }
    const used = new Set([...rows.flatMap((r) => r.sources.map(([key]) => key)), ...escalations.flatMap((e) => e.source ?? [])]);
    expect(sources.map((s) => s.key).filter((key) => !used.has(key))).toEqual([]);
  });

  it('say that a row from memory is unconfirmed', () => {
    for (const s of sources) if (s.status === 'memory') expect(sourceOf(s.key).text).toContain('unconfirmed');
  });

  it('know a defect of every kind of station, those of the wider kinds included', () => {
    for (const l of looks) expect(defectsOf(l.id).length, l.id).toBeGreaterThan(0);
    expect(looksChain('window-exit').map((l) => l.id)).toEqual(['window-exit', 'window', 'opening-wall']);
    expect(isA('skylight', 'opening-roof')).toBe(true);
    expect(isA('skylight', 'opening-wall')).toBe(false);
    expect(defectsOf('window-exit').map((d) => d.id)).toEqual(expect.arrayContaining(['window-exit.stuck', 'window.weep-blocked', 'opening-wall.top-open']));
  });

  it('say what is wrong with its subject, so that a title stands alone', () => {
    const SUBJECT =
      /\b(aerial|air conditioner|awning|base|battery|bead|bearing|belt|bottom rail|breakaway|bracket|bubbles?|camper|cap|chains?|coat|coating|corner|corrosion|coupler|deck|decal|dome|door|drain|drop-leg|edge|exhaust|fabric|flange|floor|frame|gas|gelcoat|glazing|gutter|hatch|hinge|hub|inlet|insect|kingpin|ladder|laminate|lamp|latch|lid|lock|louvre|mesh|moulded|moulding|opening|openings|paint|pane|panes|patch on the roof|pin box|pipe|plastic cover|rig|roof|sealant|screw|seal|seam|shell|sidewall|skylight|slide|solar|stabiliser|step|suspension|tent|threshold|tie-down|tongue|tow plug|tyre|underbelly|vent|wall|water heater|wheel|window|windscreen|wire|power|refrigerator|furnace)\b/i;
    for (const row of defects) {
      expect(defectTitle(row), row.id).toMatch(SUBJECT);
      expect(row.title, row.id).not.toBe(row.name);
    }
    for (const bare of ['Does not hold', 'Weigh tag lost', 'Rusted or stiff']) expect(bare).not.toMatch(SUBJECT);
  });

  it('have steps that stand alone: none twice in a list, none that points at another row, each begun like a sentence', () => {
    for (const r of remedies) {
      expect(new Set(r.steps.map((s) => s.toLowerCase())).size, r.id).toBe(r.steps.length);
      for (const step of r.steps) expect(step, r.id).toMatch(/^[A-Z0-9]/);
      for (const words of [...r.steps, r.materials, r.must_be_true, r.prove]) expect(words ?? '', r.id).not.toMatch(/\bas (above|roof patch|gasket)\b|\(ours\)/i);
    }
  });

  it('have urgencies that can be drawn, and give every defect a remedy', () => {
    for (const d of defects) {
      expect(MARKS).toContain(d.urgency);
      expect(d.remedies.length, d.id).toBeGreaterThan(0);
    }
  });

  it('let every time to a second look be read as days', () => {
    for (const d of defects) expect(firstProofDays(d.recheck), `${d.id}: ${d.recheck}`).toBeGreaterThan(0);
    expect(
      [
        '7 days, next two rains, 90 days',
        'After 24 h, weekly for a month',
        'Weekly until dry',
        'Monthly',
        'Each trip',
        'First 200 miles',
        '30 days in use',
        'Season start, monthly',
        undefined,
      ].map(firstProofDays),
    ).toEqual([7, 1, 7, 30, 1, 1, 30, 1, 7]);
  });
});
