import type { tyrePressure } from '../../entries';
import type { Standing } from '../../logbook';
import type { Rig } from '../../rig';
import { gaugeAfterChange, runFlat } from '../../science';
import { type BodyOf, ours, type Station } from '../../terms';
import { type CivilDay, fromSi, gaugePascals, kelvin, metres, parseWhen, showDay, showIn, showTyped, toSi } from '../../units';
import { worksheetById } from '../../worksheets';
import type { Because } from '../finding';
import { byWhen, inOrder } from '../order';
import { defineRule, type Scene, type Verdict } from '../rule';
import { PRACTICE, TYRE_80 } from './sources';

type Body = BodyOf<(typeof tyrePressure)['fields']>;

/** What the worksheet behind the figure takes where it is not told. */
const usual = (key: string): number => {
  const input = worksheetById('tyre-run-flat')?.inputs[key];
  if (input?.type !== 'number' || input.otherwise === undefined) throw new Error(`the worksheet of the 80 % rule has no usual ${key}`);
  return toSi(input.otherwise, input.quantity, input.unit);
};
/** Usual temperature and height at which a tyre is set, where the rig does not say. */
const SET_TEMPERATURE_K = usual('set_temperature_c');
const SET_ALTITUDE_M = usual('set_altitude_m');

/** A gauge good to 1 psi and a thermometer good to 3 K spread a reading by about 2.4 % at 80 psi; less than this below is no finding (our choice). */
const LOW_SHARE = 0.97;
const LOW = ours('low from 3 % below what it should show: a gauge good to 1 psi and a thermometer good to 3 K spread a reading by about 2.4 % at 80 psi');

const PARKED = ours('certainly not moved: one stay covers the time from the last look or care that found the tyre right to this reading');

/** What a reading comes to against what the tyre should show now. */
export type TyreReading = {
  readonly should_show: number | undefined;
  readonly share: number | undefined;
  readonly run_flat: boolean;
  readonly inputs: Readonly<Record<string, number>>;
  readonly assumed: boolean;
};

export const setPressure = (rig: Rig, station: Station | undefined): number | undefined => (station?.axle === undefined ? undefined : rig.set_pressure_pa[station.axle]);

/**
 * A reading against the set pressure carried to its own temperature and height.
 * Without a tyre temperature the tyre is taken to be as warm as when it was set, and the finding says so.
 */
export const readTyre = (body: Partial<Body>, rig: Rig, station: Station | undefined): TyreReading => {
  const set = setPressure(rig, station);
  const set_temperature = rig.set_temperature_k ?? SET_TEMPERATURE_K;
  const set_altitude = rig.set_altitude_m ?? SET_ALTITUDE_M;
  const temperature = body.tyre_temperature?.si ?? set_temperature;
  const altitude = body.altitude?.si ?? set_altitude;
  const nothing = { should_show: undefined, share: undefined, run_flat: false, inputs: {}, assumed: body.tyre_temperature === undefined };
  if (set === undefined || body.pressure === undefined) return nothing;
  const should = gaugeAfterChange(
    gaugePascals(set),
    { temperature: kelvin(set_temperature), altitude: metres(set_altitude) },
    { temperature: kelvin(temperature), altitude: metres(altitude) },
  );
  if (!should.ok) return nothing;
  const found = runFlat(gaugePascals(body.pressure.si), should.value);
  return {
    should_show: should.value,
    share: found.share,
    run_flat: found.at_or_below,
    assumed: body.tyre_temperature === undefined,
    inputs: {
      set_pressure_kpa: fromSi(set, 'gauge-pressure', 'kpa'),
      set_temperature_c: fromSi(set_temperature, 'temperature', 'c'),
      set_altitude_m: set_altitude,
      temperature_c: fromSi(temperature, 'temperature', 'c'),
      altitude_m: altitude,
      reading_kpa: fromSi(body.pressure.si, 'gauge-pressure', 'kpa'),
    },
  };
};

const CARE = ['tyre-fitted', 'pressure-set', 'professional-work'] as const;

/** What stands behind a reading: the last time the tyre was right, and a reading that counts as run flat and was not settled since. */
type Behind = { readonly right: Standing | undefined; readonly flat: Standing | undefined; readonly parked: Standing | undefined };

const remembered = new WeakMap<Scene, ReadonlyMap<Standing, Behind>>();

/** Walks all readings of a tyre once, with the care between them. */
const behind = (scene: Scene): ReadonlyMap<Standing, Behind> => {
  const known = remembered.get(scene);
  if (known) return known;
  const story = inOrder([scene.through('tyre-pressure'), ...CARE.map(scene.through)].filter((l) => l.length > 0));
  const found = new Map<Standing, Behind>();
  let [right, flat]: (Standing | undefined)[] = [];
  for (const step of story) {
    if (step.entry.kind !== 'tyre-pressure') {
      if (flat && byTrade(step, flat)) flat = undefined;
      const setTo = readTyre(step.body as Partial<Body>, scene.rig, scene.station).share;
      if (step.entry.kind === 'pressure-set' && setTo !== undefined && setTo >= LOW_SHARE) right = step;
      if (step.entry.kind === 'tyre-fitted') right = undefined;
      continue;
    }
    const read = readTyre(step.body as Body, scene.rig, scene.station);
    const parked = read.run_flat && right && (step.body as Body).driven_since_set !== 'yes' ? covering(right, step, scene) : undefined;
    found.set(step, { right, flat, parked });
    if (read.run_flat && !parked) flat ??= step;
    if ((read.share ?? 0) >= LOW_SHARE) right = step;
  }
  remembered.set(scene, found);
  return found;
};

/** A new tyre, or a professional's work that names what this reading raised. */
const byTrade = (care: Standing, flat: Standing): boolean =>
  care.entry.kind === 'tyre-fitted' || (care.entry.kind === 'professional-work' && (care.entry.concerns ?? []).some((c) => c.startsWith('tyre-pressure/') || c === flat.entry.id));

/** First and last day of a stay; one that has not ended reaches as far as one looks. */
const spanOf = (stay: Standing): readonly [from: CivilDay, to: CivilDay | undefined] => {
  const when = parseWhen(stay.observed_at);
  const from = when?.form === 'span' ? when.from : stay.day;
  return [from, when?.form === 'span' ? when.to : undefined];
};

/** The stay that covers the whole time between two looks, unless a later stay or a leg says that the rig moved. */
const covering = (from: Standing, to: Standing, scene: Scene): Standing | undefined => {
  const stays = scene.ofRig('stay');
  const moved = scene.ofRig('leg').some((leg) => leg.day > from.day && leg.day <= to.day);
  if (moved) return undefined;
  return stays.find((stay, i) => {
    const [begins, ends] = spanOf(stay);
    const next = stays[i + 1];
    const until = ends ?? (next ? spanOf(next)[0] : undefined);
    return begins <= from.day && (until === undefined || until >= to.day);
  });
};

const judge = (seen: Standing, scene: Scene): readonly Verdict[] => {
  const body = seen.body as Body;
  const { rig, station } = scene;
  const here = [seen.entry.id];
  const read = readTyre(body, rig, station);
  const shown = (pa: number): string => showIn(pa, 'gauge-pressure', body.pressure.unit);
  if (read.should_show === undefined || read.share === undefined)
    return [
      {
        key: '',
        title: 'Tyre pressure read, set pressure not known',
        urgency: 'watch',
        who: 'yourself',
        because: [
          {
            text: `${showTyped(body.pressure, 'gauge-pressure')} was read on ${showDay(seen.day)}, but the cold pressure to set on this axle is not recorded: it could not be judged. It stands on the rig's label.`,
            entries: here,
            source: PRACTICE,
          },
        ],
        remedies: [],
      },
    ];
  const history = behind(scene).get(seen) ?? { right: undefined, flat: undefined, parked: undefined };
  if (history.flat)
    return [
      {
        ...RUN_FLAT,
        because: [
          {
            text: `On ${showDay(history.flat.day)} it was at or below 80 % of what it should show, and nobody has looked inside it since. Air does not cure that: ${showTyped(body.pressure, 'gauge-pressure')} on ${showDay(seen.day)} changes nothing.`,
            entries: [history.flat.entry.id, seen.entry.id],
            source: TYRE_80,
          },
          { text: 'A professional takes it off and looks inside. Do not add air.', entries: [history.flat.entry.id], source: TYRE_80 },
        ],
      },
    ];
  if (read.share >= LOW_SHARE) return [];
  const worksheet = { id: 'tyre-run-flat', inputs: read.inputs };
  const against = `${showTyped(body.pressure, 'gauge-pressure')} on ${showDay(seen.day)}; it should show ${shown(read.should_show)}${read.assumed ? ', taking the tyre to be as warm as when it was set' : ''}.`;
  if (!read.run_flat)
    return [
      {
        key: '',
        title: 'Tyre low',
        urgency: 'before-moving',
        who: 'yourself',
        because: [
          { text: against, entries: here, source: LOW, worksheet },
          { text: 'A low tyre is set to its cold pressure before the wheels turn.', entries: here, source: PRACTICE },
          leak(seen, read, history.right, scene, shown),
        ],
        defect: 'tyre.low',
      },
    ];
  const low: Because = { text: `${against} That is at or below 80 % of it.`, entries: here, source: TYRE_80, worksheet };
  if (!history.parked || !history.right) {
    const driven = body.driven_since_set === 'yes' ? 'It was driven like this' : 'Whether it was driven like this is not known';
    return [{ ...RUN_FLAT, because: [low, { text: `${driven}: a professional takes it off and looks inside. Do not add air.`, entries: here, source: TYRE_80 }] }];
  }
  const { right, parked } = history;
  const again = scene.through('tyre-pressure').filter((s) => byWhen(s, right) < 0 && readTyre(s.body as Body, rig, station).run_flat);
  return [
    {
      key: '',
      title: 'Tyre far down, not moved since it was right',
      urgency: 'before-moving',
      who: again.length > 0 ? 'professional' : 'yourself',
      because: [
        low,
        {
          text: `It was right on ${showDay(right.day)}, and one stay covers the time since: it was not driven like this. Look it over as far as it shows, inflate it from a distance with a clip-on chuck, out of line with the sidewall, and watch it.`,
          entries: [seen.entry.id, right.entry.id, parked.entry.id],
          source: PARKED,
        },
        ...(again.length > 0
          ? [{ text: 'It has been this low before: a professional finds out why.', entries: [seen.entry.id, ...again.map((s) => s.entry.id)], source: PRACTICE }]
          : []),
      ],
      defect: 'tyre.low',
      remedies: again.length > 0 ? ['tyre-pro'] : ['tyre-from-a-distance'],
      cautions: ['tyre'],
    },
  ];
};

/** Air that is missing went somewhere: how much since it was right, where to look, and when it is no longer one's own work. */
const leak = (seen: Standing, read: TyreReading, right: Standing | undefined, scene: Scene, shown: (pa: number) => string): Because => {
  const look = 'Look for the leak: valve, rim edge, a nail in the tread. If it loses air again, a professional takes it off and finds out why.';
  const then = right && readTyre(right.body as Partial<Body>, scene.rig, scene.station);
  if (!right || then?.share === undefined || read.share === undefined || read.should_show === undefined || then.share <= read.share)
    return { text: `How fast it loses air is not known yet: read it again after a day. ${look}`, entries: [seen.entry.id], source: PRACTICE };
  const lost = shown((then.share - read.share) * read.should_show);
  return {
    text: `It was right on ${showDay(right.day)}, and has lost about ${lost} since${read.assumed || then.assumed ? '' : ', temperature taken out'}. ${look}`,
    entries: [right.entry.id, seen.entry.id],
    source: PRACTICE,
  };
};

const RUN_FLAT = { key: '', title: 'Tyre counts as run flat', urgency: 'before-moving', who: 'professional', defect: 'tyre.run-flat' } as const;

const BY_TRADE: ReadonlySet<string> = new Set(['tyre-fitted', 'professional-work']);

export const tyrePressureRule = defineRule({
  id: 'tyre-pressure',
  title: 'Pressure of a tyre',
  says: 'Below what it should show at this temperature and height, a tyre is set before moving; at or below 80 % of it, driven so or not known, it counts as run flat and goes to a professional, and is never just filled.',
  sources: [TYRE_80, LOW, PARKED],
  reads: ['tyre-pressure'],
  alsoReads: ['stay', 'leg'],
  example: {
    kind: 'tyre-pressure',
    body: { pressure: { typed: '60', unit: 'psi', si: toSi(60, 'gauge-pressure', 'psi') }, tyre_temperature: { typed: '20', unit: 'c', si: 293.15 } },
    looks: 'tyre',
    gives: 'before-moving',
  },
  judge,
  // A tyre that counts as run flat is not cured by air: only the trade settles it.
  settles: (care, { defect }) => BY_TRADE.has(care.entry.kind) || (defect !== 'tyre.run-flat' && care.entry.kind === 'pressure-set'),
  endedBy: ['tyre-fitted'],
});
