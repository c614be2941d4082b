import { type Because, type Candidate, caution, heightFrom, type Leak, type LooseSkin, type Panel, type Spot, TRADE_BANDS, type Water, WOOD_BANDS } from '../plan';
import type { Rig } from '../rig';
import { type Preferences, show, showDay, showIn } from '../units';
import { type SourceNumbers, sourceLines, sourceNumbers, wrap } from './lines';

const STOP_WORD: Readonly<Record<Leak['stop']['state'], string>> = {
  open: 'open',
  repaired: 'repaired, not yet shown to hold',
  stopped: 'stopped',
  reopened: 'open again',
};
const DRY_WORD: Readonly<Record<Leak['dryness']['state'], string>> = {
  wet: 'wet',
  drying: 'drying',
  wetting: 'getting wetter',
  dry: 'dry again',
  reopened: 'wet again',
  'not-known': 'not known',
};
const STATE_WORD: Readonly<Record<Spot['state'], string>> = {
  wet: 'wet',
  damp: 'damp',
  dry: 'dry',
  weather: 'as its air',
  condensation: 'sweats',
  'not-known': 'not known',
};
const CAUSE_WORD: Readonly<Record<Leak['other_causes'][number]['state'], string>> = { 'ruled-out': 'ruled out', 'not-looked-at': 'not looked into', 'it-is-this': 'it is this' };

const figureOn = (panel: Pick<Panel, 'scale'>, value: number): string =>
  panel.scale === 'relative' ? `${Math.round(value * 100)} of 100` : showIn(value, 'moisture-content', 'percent');

const points = (panel: Pick<Panel, 'scale'>, by: number): string => `${by < 0 ? '−' : '+'}${(Math.abs(by) * 100).toFixed(panel.scale === 'relative' ? 0 : 1)}`;

/** A place on its own panel, in the person's own units, its height as it is measured there; a station by its name. */
const placeIn = (spot: Spot, rig: Rig, preferences: Preferences): string =>
  spot.station !== undefined
    ? spot.words
    : `${show(spot.point_m[0], 'length', preferences)} along, ${show(spot.point_m[1] - heightFrom(rig, spot.face, spot.side).from_m, 'length', preferences)} up`;

const onFace = (spot: Spot, rig: Rig, preferences: Preferences): string => {
  if (spot.station !== undefined) return spot.words;
  const face = rig.faces.find((f) => f.id === spot.face);
  return `${spot.side === 'inside' ? (face?.inside_name ?? spot.face) : `${face?.name ?? spot.face}, outside`}, ${placeIn(spot, rig, preferences)}`;
};

/** What stands over the places of a panel: heights within the rig are told from the floor. */
const placeHead = (panel: Panel, rig: Rig): string => {
  const { words } = heightFrom(rig, panel.face, panel.side);
  return /floor$/.test(words) ? `place, up ${words}` : 'place';
};

const COLUMNS = [32, 10, 10, 13, 10, 9] as const;
const row = (...cells: readonly string[]): string => `    ${cells.map((c, i) => c.padEnd(COLUMNS[i] ?? 0)).join(' ')}`.trimEnd();

/** A wall metered on a grid: its dry places are told together after so many. */
const MOST_DRY = 4;

const bandWord = (spot: Spot): string => {
  const id = spot.yardsticks.bands?.trade;
  return id === undefined || id === 'none' ? '' : (TRADE_BANDS.find((b) => b.id === id)?.word.split(' - ')[0] ?? '');
};

const rowsOf = (panel: Panel, rig: Rig, preferences: Preferences): readonly string[] => {
  const spots = panel.spots.toSorted((a, b) => (b.readings.at(-1)?.value ?? 0) - (a.readings.at(-1)?.value ?? 0));
  const dry = spots.filter((s) => s.state === 'dry');
  const shown = spots.filter((s) => s.state !== 'dry' || dry.indexOf(s) < MOST_DRY);
  const rows = shown.map((s) => {
    const last = s.readings.at(-1);
    const y = s.yardsticks;
    return row(
      placeIn(s, rig, preferences),
      last?.value === undefined ? 'no number' : figureOn(panel, last.value),
      y.reference ? points(panel, y.reference.excess) : '',
      y.equilibrium ? points(panel, y.equilibrium.excess) : '',
      STATE_WORD[s.state],
      s.trend ? s.trend.word.replace('-', ' ') : '',
      bandWord(s),
    );
  });
  return dry.length > MOST_DRY ? [...rows, `    and ${dry.length - MOST_DRY} more, all dry`] : rows;
};

const panelText = (panel: Panel, rig: Rig, preferences: Preferences, sources: SourceNumbers): readonly string[] => {
  const { reference } = panel;
  const head = reference
    ? `${panel.words}: ${reference.readings} dry ${reference.readings === 1 ? 'place' : 'places'} on ${showDay(reference.day)} read ${figureOn(panel, reference.median)}, spread ${points(panel, reference.spread).slice(1)}.`
    : panel.scale === 'pin'
      ? `${panel.words}: no dry place was read; only the bands and the air can be held against it. Three places that are surely dry, read with it, or the air it has stood in, tell the weather from water.`
      : `${panel.words}: no dry place was read, and without one such a meter says nothing by itself. Read three places that are surely dry with it.`;
  const wood = new Set(panel.spots.flatMap((s) => s.yardsticks.bands?.wood ?? []));
  const worst = WOOD_BANDS.findLast((b) => wood.has(b.id));
  return [
    wrap(head, 2),
    row(placeHead(panel, rig), 'reads', 'above dry', 'above its air', 'so it is', 'course', 'trade band'),
    ...rowsOf(panel, rig, preferences),
    ...(worst && worst.id !== 'in-service' ? [wrap(`Wood itself, at its wettest: ${worst.text}.`, 4)] : []),
    ...panel.spots.flatMap((s) =>
      s.risk && (s.risk.days > 0 || (s.risk.mould !== undefined && s.risk.mould !== 'low'))
        ? s.risk.because.map((b) => wrap(`${onFace(s, rig, preferences)}: ${b.text} ${sources.of(b.source)}`, 4))
        : [],
    ),
  ];
};

const reasons = (because: readonly Because[], indent: number, sources: SourceNumbers): readonly string[] => because.map((b) => wrap(`${b.text} ${sources.of(b.source)}`, indent));

const LIKELY_WORD: Readonly<Record<Candidate['word'], string>> = { likely: 'Likely', possible: 'Possible', unlikely: 'Unlikely' };

const leakText = (leak: Leak, number: number, rig: Rig, preferences: Preferences, sources: SourceNumbers): readonly string[] => {
  const name = (id: string): string => rig.stations.find((s) => s.id === id)?.name ?? id;
  const [first] = leak.spots;
  const near = leak.candidates.filter((c) => c.word !== 'unlikely');
  const unlikely = leak.candidates.filter((c) => c.word === 'unlikely');
  return [
    wrap(
      `${number}. Since ${showDay(leak.since)}, ${leak.spots.length} ${leak.spots.length === 1 ? 'place' : 'places'}${first ? `, first at ${onFace(first, rig, preferences)}` : ''}. Leak ${STOP_WORD[leak.stop.state]}; wall ${DRY_WORD[leak.dryness.state]}.`,
      2,
    ),
    wrap(leak.sentence, 6),
    ...near.flatMap((c) => [wrap(`${c.station === leak.confirmed ? 'Seen' : LIKELY_WORD[c.word]}: ${name(c.station)}`, 6), ...reasons(c.because, 8, sources)]),
    ...(unlikely.length === 0 ? [] : [wrap(`Unlikely: ${unlikely.map((c) => name(c.station)).join('; ')}.`, 6)]),
    ...(leak.apart === undefined ? [] : [wrap(leak.apart, 6)]),
    ...reasons(leak.clues, 6, sources),
    wrap(
      `Other causes${leak.other_causes.some((c) => c.state === 'not-looked-at') ? ', to be ruled out first' : ''}: ${leak.other_causes.map((c) => `${c.cause.replace('-', ' ')} ${CAUSE_WORD[c.state]}`).join('; ')}.`,
      6,
    ),
    ...leak.other_causes.filter((c) => c.state === 'not-looked-at').map((c) => wrap(`${c.how}`, 8)),
    ...(leak.next_test
      ? [
          wrap(`Test next: ${name(leak.next_test.station)} with ${leak.next_test.how === 'hose' ? 'a hose' : 'soap and slight pressure'}, about ${leak.next_test.minutes} min.`, 6),
          ...reasons(leak.next_test.because, 8, sources),
          ...leak.next_test.cautions.flatMap((id) => {
            const row = caution(id);
            return row ? [wrap(`! ${row.warning} ${row.do}`, 8)] : [];
          }),
          ...leak.next_test.steps.map((s) => wrap(`- ${s}`, 8)),
        ]
      : []),
    ...reasons(leak.stop.because, 6, sources),
    ...reasons(leak.dryness.because, 6, sources),
    ...leak.due.map((d) => wrap(`${d.done === undefined ? '[ ]' : '[x]'} ${d.words}`, 6)),
  ];
};

const looseText = (skin: LooseSkin, number: number, sources: SourceNumbers): readonly string[] => [
  wrap(`${number}. ${skin.words}. ${skin.sentence}`, 2),
  ...reasons(skin.because, 6, sources),
  ...skin.steps.map((s) => wrap(`- ${s}`, 8)),
];

/** Everything about water as plain text: each panel against its yardsticks, each leak with its ways in, the next test, and what is still to be shown. */
export const waterText = (water: Water, rig: Rig, preferences: Preferences): string => {
  const sources = sourceNumbers();
  const lines: string[] = [];
  if (water.panels.length === 0 && water.leaks.length === 0 && water.loose_skins === undefined) lines.push('No moisture reading and no sign of water is in the logbook.');
  if (water.panels.length > 0)
    lines.push(`Readings (${water.panels.length} ${water.panels.length === 1 ? 'panel' : 'panels'})`, ...water.panels.flatMap((p) => panelText(p, rig, preferences, sources)));
  for (const n of water.no_leak)
    lines.push(
      '',
      wrap(
        `No leak is named for ${water.panels.find((p) => p.id === n.panel)?.words ?? n.panel}: ${n.why === 'weather' ? 'it is as damp as its surroundings' : 'its surface sweats'}.`,
        0,
      ),
      ...reasons(n.because, 2, sources),
    );
  if (water.leaks.length > 0) lines.push('', `Where it comes in (${water.leaks.length})`, ...water.leaks.flatMap((l, i) => leakText(l, i + 1, rig, preferences, sources)));
  const skins = water.loose_skins ?? [];
  if (skins.length > 0) lines.push('', `Loose skin (${skins.length})`, ...skins.flatMap((d, i) => looseText(d, i + 1, sources)));
  if (water.set_aside.length > 0) lines.push('', 'Set aside', ...reasons(water.set_aside, 2, sources));
  if (water.panels.length > 0 || water.leaks.length > 0 || skins.length > 0)
    lines.push('', wrap('Wires and gas lines run in walls: unplug the rig, shut the gas, use short pins. Mould: gloves and a mask. A wet roof is slippery and may be rotten.', 0));
  return `${[...lines, ...sourceLines(sources)].join('\n')}\n`;
};

/** Water in the plan's text: one line a leak, the rest is told by the command for water. */
export const waterLines = (water: Water, rig: Rig): readonly string[] => {
  const name = (id: string): string => rig.stations.find((s) => s.id === id)?.name ?? id;
  const open = water.leaks.filter((l) => l.stop.state !== 'stopped' || l.dryness.state !== 'dry');
  const next = (l: Leak): string => {
    const due = l.due.find((d) => d.done === undefined);
    if (due) return ` Next: ${due.words}`;
    return l.next_test ? ` Test next: ${name(l.next_test.station)} with ${l.next_test.how === 'hose' ? 'a hose' : 'soap'}.` : '';
  };
  return [
    ...open.map((l) => wrap(`Leak ${STOP_WORD[l.stop.state]}, wall ${DRY_WORD[l.dryness.state]}. ${l.sentence}${next(l)}`, 2)),
    ...(water.loose_skins ?? []).map((d) => wrap(`Loose skin, ${d.words}. ${d.sentence}`, 2)),
    ...water.no_leak.map((n) =>
      wrap(`${water.panels.find((p) => p.id === n.panel)?.words ?? n.panel}: ${n.why === 'weather' ? 'as damp as its surroundings, no leak named.' : 'sweats, no leak named.'}`, 2),
    ),
  ];
};
