import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defects } from '../plan/trade';
import type { AnyKind, Entry, Field, KindGroup, Place } from '../terms';
import { fromSi, type Preferences, parseDay, quantities, readQuantity, usualUnit } from '../units';
import { worksheets } from '../worksheets';
import { doubts, isAsked, jsonSchema, keepAsked, kindById, kinds, readBody, readEntry, soundBody, upcast } from '.';

/**
 * What every kind must hold, made from the list of kinds itself. Outside witness for the published schemas: a JSON Schema
 * validator that this project did not write (ajv, draft 2020-12, strict mode). It must accept every example and every body
 * that a form can make, and refuse every breakage that a schema can express. It cannot see that an SI value disagrees with
 * what was typed, or that a day does not exist: there our own reading is checked alone.
 */
const here = dirname(fileURLToPath(import.meta.url));
const FOLDER: Readonly<Record<KindGroup, string>> = { observation: 'observations', care: 'care', decision: 'decisions', whereabouts: 'whereabouts', description: 'descriptions' };
const SYSTEMS: readonly Preferences[] = [
  { system: 'us', units: {} },
  { system: 'metric', units: {} },
];

type Example = Pick<Entry, 'version' | 'place' | 'observed_at' | 'body' | 'concerns' | 'note'>;
type Body = Readonly<Record<string, unknown>>;

const folderOf = (kind: AnyKind): string => join(here, FOLDER[kind.group], kind.id);
const examplesOf = (kind: AnyKind): readonly Example[] => JSON.parse(readFileSync(join(folderOf(kind), 'example.json'), 'utf8')) as Example[];
const entryOf = (kind: AnyKind, example: Example): Record<string, unknown> => ({
  id: '019960f0-2f00-7000-8000-0000000000ff',
  rig: 'heron',
  kind: kind.id,
  recorded_at: '2027-01-05T12:00:00-05:00',
  by: 'owner',
  device: 'phone',
  counter: 1,
  previous: null,
  heads: [],
  ...example,
});
const newest = (kind: AnyKind): readonly Example[] => examplesOf(kind).filter((e) => e.version === kind.version);

const ajv = new Ajv2020({ strict: true, strictTypes: false, strictRequired: false, allErrors: true });
ajv.addFormat('date', (text: string) => parseDay(text) !== undefined);
const accepts = new Map(kinds.map((kind) => [kind.id, ajv.compile(jsonSchema(kind))]));
const schemaAccepts = (kind: AnyKind, value: unknown): boolean => accepts.get(kind.id)?.(value) === true;
const weRead = (value: unknown): boolean => readEntry(kinds, value).ok;

/** A readable answer to one field, the `choice`-th of those possible; text and data come from the kind's own examples. */
const answers = (kind: AnyKind, key: string, field: Field): readonly unknown[] => {
  const shown = newest(kind).flatMap((e) => ((e.body as Body)[key] === undefined ? [] : [(e.body as Body)[key]]));
  switch (field.type) {
    case 'choice':
      return field.options.map((o) => o.id);
    case 'many':
      return field.options === 'defects-of-station' ? [['opening-wall.top-open'], []] : [...field.options.map((o) => [o.id]), field.options.map((o) => o.id)];
    case 'number': {
      const { least = -1, most = 1 } = field.limits;
      return quantities[field.quantity].units.flatMap((u) =>
        [0, 0.25, 0.5, 0.75, 1].flatMap((share) => {
          const text = String(Number(fromSi(least + (most - least) * share, field.quantity, u.id).toPrecision(9)));
          const read = readQuantity(text, field.quantity, u.id, field.limits);
          return read.ok ? [read.value] : [];
        }),
      );
    }
    case 'text':
      return shown.length > 0 ? shown : ['in plain words'];
    case 'code':
      return field.code === 'tyre-date' ? ['2319', '317'] : ['ST225/75R15', '8R19.5'];
    case 'day':
      return ['2026-09-19', '2028-02-29'];
    case 'flag':
      return [true, false];
    case 'data':
      return shown;
  }
};

/** Any body that a form of this kind can make. */
const anyBody = (kind: AnyKind): fc.Arbitrary<Body> =>
  fc
    .record(
      Object.fromEntries(
        Object.entries(kind.fields).map(([key, field]) => {
          const answer = fc.constantFrom(...answers(kind, key, field));
          return [key, field.optional ? fc.option(answer, { nil: undefined }) : answer];
        }),
      ),
    )
    .map((drawn) => keepAsked(kind.fields, Object.fromEntries(Object.entries(drawn).filter(([, v]) => v !== undefined))))
    .filter((body) => (kind.refuse?.(body) ?? []).length === 0);

/** A body in which one field has one answer, with as little else as that needs. */
const bodyWith = (kind: AnyKind, key: string, answer: unknown): Body => {
  const body: Record<string, unknown> = {};
  const give = (k: string, value: unknown): void => {
    body[k] = value;
    const { showIf } = kind.fields[k] ?? {};
    const parent = showIf && kind.fields[showIf.field];
    if (showIf && parent && !isAsked(kind.fields[k] as Field, body)) give(showIf.field, parent.type === 'many' ? [showIf.in[0]] : showIf.in[0]);
  };
  give(key, answer);
  for (const [k, field] of Object.entries(kind.fields)) if (body[k] === undefined && !field.optional && isAsked(field, body)) body[k] = answers(kind, k, field)[0];
  return body;
};

describe('the list of kinds', () => {
  it('has each id once, and knows each by its id', () => {
    expect(new Set(kinds.map((k) => k.id)).size).toBe(kinds.length);
    expect(kinds.length).toBeGreaterThanOrEqual(50);
    for (const kind of kinds) expect(kindById(kind.id)).toBe(kind);
  });

  it('has every folder, and no folder is left out', () => {
    const folders = Object.values(FOLDER).flatMap((group) =>
      readdirSync(join(here, group), { withFileTypes: true }).flatMap((d) => (d.isDirectory() ? [`${group}/${d.name}`] : [])),
    );
    expect(folders.toSorted()).toEqual(kinds.map((k) => `${FOLDER[k.group]}/${k.id}`).toSorted());
  });
});

describe.each(kinds.map((kind) => [kind.id, kind] as const))('%s', (_id, kind) => {
  it('is declared in full', () => {
    expect(kind.id).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(kind.title).toMatch(/^[A-Z]/);
    expect(kind.meaning).toMatch(/^[A-Z].{30,}\.$/);
    expect(kind.places.length).toBeGreaterThan(0);
    expect(existsSync(join(folderOf(kind), 'kind.ts'))).toBe(true);
    for (const [key, field] of Object.entries(kind.fields)) {
      expect(key).toMatch(/^[a-z]+(_[a-z]+)*$/);
      expect(field.label, key).toMatch(/^[A-Z]/);
      if ((field.type === 'choice' || field.type === 'many') && field.options !== 'defects-of-station') {
        expect(new Set(field.options.map((o) => o.id)).size, key).toBe(field.options.length);
        for (const option of field.options) expect(option.word, `${key} ${option.id}`).toMatch(/^[A-Z]/);
      }
      if (field.showIf) {
        const other = kind.fields[field.showIf.field];
        const ids = other && (other.type === 'choice' || other.type === 'many') && other.options !== 'defects-of-station' ? other.options.map((o) => o.id) : [];
        expect(ids, `${key} waits for answers that exist`).toEqual(expect.arrayContaining([...field.showIf.in]));
      }
      if (field.type === 'number') {
        expect(field.limits.least !== undefined && field.limits.most !== undefined, `${key} has limits`).toBe(true);
        for (const unit of Object.values(field.units ?? {})) expect(quantities[field.quantity].units.map((u) => u.id)).toContain(unit);
        if (field.partner !== undefined) expect(kind.fields[field.partner]?.type).toBe('number');
        if (field.usual) {
          expect(field.usual.least ?? 0).toBeGreaterThanOrEqual(field.limits.least ?? 0);
          expect(field.usual.most ?? 0).toBeLessThanOrEqual(field.limits.most ?? 0);
        }
      }
    }
  });

  it('asks for a number again at every round', () => {
    const reading = Object.values(kind.fields).some((f) => f.type === 'number' && !f.optional);
    expect(reading && kind.repeatable).toBe(false);
  });

  it('has, if any, a sound answer that is a whole body by itself', () => {
    const body = soundBody(kind);
    if (!body || !kind.sound) return;
    expect(readBody(kind, body).ok).toBe(true);
    const field = kind.fields[kind.sound.field];
    expect(field?.type).toBe('choice');
    expect(kind.group).toBe('observation');
  });

  it('reads its own examples, and tells each in one line in both unit systems', () => {
    const examples = examplesOf(kind);
    expect(examples.length).toBeGreaterThanOrEqual(2);
    for (const example of examples) {
      const read = readEntry(kinds, entryOf(kind, example));
      expect(read).toMatchObject({ ok: true });
      if (!read.ok) continue;
      expect(doubts(kind, read.value.body as Body)).toEqual([]);
      for (const preferences of SYSTEMS) expect(kind.line(read.value.body, preferences)).toMatch(/^(?!.*(undefined|NaN|\[object|null))\S.*$/);
    }
  });

  it('reaches every option and every field, and tells it in a line', () => {
    for (const [key, field] of Object.entries(kind.fields)) {
      for (const answer of answers(kind, key, field)) {
        const body = bodyWith(kind, key, answer);
        if ((kind.refuse?.(body) ?? []).length > 0) continue;
        expect(readBody(kind, body), `${key} ${JSON.stringify(answer)}`).toMatchObject({ ok: true });
        for (const preferences of SYSTEMS) expect(kind.line(body, preferences)).toMatch(/^(?!.*(undefined|NaN|\[object|null))\S.*$/);
      }
    }
  });

  it('is accepted by its published schema for whatever a form can make', () => {
    const [first] = newest(kind);
    if (!first) throw new Error(`${kind.id} has no example of version ${kind.version}`);
    for (const example of newest(kind)) expect(schemaAccepts(kind, entryOf(kind, example)), JSON.stringify(accepts.get(kind.id)?.errors?.slice(0, 2))).toBe(true);
    fc.assert(
      fc.property(anyBody(kind), (body) => {
        const entry = entryOf(kind, { ...first, body });
        expect(readEntry(kinds, entry)).toMatchObject({ ok: true });
        expect(schemaAccepts(kind, entry)).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  it('refuses what is broken, by our own reading and by the published schema', () => {
    const [example] = newest(kind);
    if (!example) throw new Error(`${kind.id} has no example of version ${kind.version}`);
    const whole = entryOf(kind, example);
    const body = example.body as Body;
    const both = (what: string, broken: Record<string, unknown>): void => {
      expect(weRead(broken), `we refuse: ${what}`).toBe(false);
      expect(schemaAccepts(kind, broken), `schema refuses: ${what}`).toBe(false);
    };
    const withBody = (to: unknown): Record<string, unknown> => ({ ...whole, body: to });
    both('an unknown field', withBody({ ...body, not_a_field: 1 }));
    both('a body that is a list', withBody([body]));
    both('a negative counter', { ...whole, counter: -1 });
    both('version 0', { ...whole, version: 0 });
    both('an id of no form', { ...whole, id: '12' });
    both('a previous hash cut short', { ...whole, previous: 'ab' });
    both('a place that does not exist', { ...whole, place: { at: 'moon' } });
    for (const at of ['rig', 'station', 'point', 'outline', 'stretch'] as const) if (!kind.places.includes(at)) both(`a place of the form ${at}`, { ...whole, place: PLACES[at] });
    if (kind.sides.length === 1 && 'side' in example.place)
      both('the wrong side', { ...whole, place: { ...example.place, side: kind.sides[0] === 'inside' ? 'outside' : 'inside' } });
    if (kind.concerns) both('naming nothing', { ...whole, concerns: [] });
    if (kind.concerns === 'one') both('naming two', { ...whole, concerns: ['a', 'b'] });
    for (const [key, field] of Object.entries(kind.fields)) {
      const given = bodyWith(kind, key, answers(kind, key, field)[0]);
      both(`${key} of the wrong form`, withBody({ ...given, [key]: field.type === 'number' ? 12 : { nothing: 0 } }));
      const asked = isAsked(field, given);
      if (!field.optional && asked) both(`${key} missing`, withBody(Object.fromEntries(Object.entries(given).filter(([k]) => k !== key))));
      if (field.type === 'choice') both(`${key} with an answer that does not exist`, withBody({ ...given, [key]: 'no-such-answer' }));
      if (field.type === 'many') both(`${key} with an answer twice`, withBody({ ...given, [key]: [...(given[key] as string[]), ...(given[key] as string[])] }));
      if (field.showIf) {
        const parent = kind.fields[field.showIf.field] as Field;
        const other = answers(kind, field.showIf.field, parent).find((a) => !isAsked(field, { [field.showIf?.field ?? '']: a }));
        const hidden = bodyWith(kind, field.showIf.field, other);
        both(`${key} where it is not asked`, withBody({ ...hidden, [key]: answers(kind, key, field)[0] }));
      }
      if (field.type === 'number') {
        const value = answers(kind, key, field)[0] as { typed: string; unit: string; si: number };
        const far = readQuantity(
          String(Number(fromSi((field.limits.most ?? 0) * 2 + 1000, field.quantity, usualUnit(field.quantity, { system: 'metric', units: {} })).toPrecision(9))),
          field.quantity,
          usualUnit(field.quantity, { system: 'metric', units: {} }),
        );
        if (far.ok) both(`${key} beyond its limits`, withBody({ ...given, [key]: far.value }));
        both(`${key} in a unit that does not exist`, withBody({ ...given, [key]: { ...value, unit: 'cubit' } }));
        expect(weRead(withBody({ ...given, [key]: { ...value, si: value.si + 0.01 * Math.max(1, Math.abs(value.si)) } })), `${key}: SI and typed disagree`).toBe(false);
        expect(weRead(withBody({ ...given, [key]: { ...value, typed: 'twelve' } })), `${key}: not a number`).toBe(false);
      }
      if (field.type === 'day') both(`${key} on 30 February`, withBody({ ...given, [key]: '2026-02-30' }));
    }
    expect(weRead({ ...whole, observed_at: '2026-02-30T10:00:00Z' }), 'a day that does not exist').toBe(false);
    expect(weRead({ ...whole, observed_at: '2026-05-31/2026-03-01' }), 'a span that ends before it begins').toBe(false);
    expect(weRead({ ...whole, recorded_at: '2026-05-31T25:00:00Z' }), 'an hour that does not exist').toBe(false);
  });

  it('brings every older version up to the newest', () => {
    const older = examplesOf(kind).filter((e) => e.version < kind.version);
    for (let v = 1; v < kind.version; v++) {
      const example = older.find((e) => e.version === v);
      expect(example, `an example of version ${v}`).toBeDefined();
      if (!example) continue;
      expect(readBody(kind, example.body).ok, 'the older body is not a newest body by chance').toBe(false);
      expect(readBody(kind, upcast(kind, v, example.body))).toMatchObject({ ok: true });
    }
    expect(Object.keys(kind.upcasts ?? {}).map(Number)).toEqual(Array.from({ length: kind.version - 1 }, (_, i) => i + 1));
  });
});

const PLACES: Readonly<Record<Place['at'], Place>> = {
  rig: { at: 'rig' },
  station: { at: 'station', station: 'roof.skylight', side: 'outside' },
  point: { at: 'point', face: 'roof', side: 'outside', point_m: [1, 1] },
  outline: {
    at: 'outline',
    face: 'roof',
    side: 'outside',
    outline_m: [
      [1, 1],
      [2, 1],
      [2, 2],
    ],
  },
  stretch: { at: 'stretch', station: 'curb.roof-edge-rail', side: 'outside', from_m: 0, to_m: 1 },
};

describe('kinds together', () => {
  it('name only worksheets that there are', () => {
    const ids = new Set(worksheets.map((w) => w.id));
    const named = kinds.flatMap((k) => k.worksheet ?? []);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((id) => !ids.has(id))).toEqual([]);
  });

  it('offer defects under the ids of the table of defects, but for paint, which the table has under rust', () => {
    const table = new Set(defects.map((d) => d.id));
    const offered = kinds
      .flatMap((k) => Object.values(k.fields).flatMap((f) => (f.type === 'many' && f.options !== 'defects-of-station' ? f.options.map((o) => o.id) : [])))
      .filter((id) => id.includes('.'));
    expect(offered.length).toBeGreaterThan(40);
    expect(offered.filter((id) => !table.has(id))).toEqual(['step.paint-worn', 'step.paint-chipped']);
  });

  it('at least two have been through a change of version', () => {
    expect(kinds.filter((k) => k.version > 1).length).toBeGreaterThanOrEqual(2);
  });
});
