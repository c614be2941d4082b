import { describe, expect, it } from 'vitest';
import { numberedMarks } from '../../drawing';
import { kinds } from '../../entries';
import { fold, type State } from '../../logbook';
import { type Finding, isOpen, type Plan, planAfter } from '../../plan';
import { blankRig, layoutFrom, type Rig, type RigKindId, walkingOrder } from '../../rig';
import { dayOf } from '../../units';
import { conditionRecord, netAtScale } from './condition-record';
import { planSheet } from './plan-sheet';
import { PAPERS, paginate, roomOn } from './sheet-page';
import { walkSheet } from './walk-sheet';

/** Paper against what was handed to it: nothing is dropped between plan and page, the stated scale is true, sheets are counted, and what people typed stays text. */
const HOSTILE = 'Plover <script>alert(1)</script> & "co"';

const rigOf = (kind: RigKindId): Rig => {
  const layout = layoutFrom({ kind, name: HOSTILE, year: 2014, skin: 'fibreglass', construction: 'bonded', roof: 'tpo' });
  if (!layout.ok) throw new Error(layout.refusals[0]?.sentence);
  return { ...blankRig('trial'), name: HOSTILE, kind, year: 2014, ...layout.value };
};

const on = dayOf(2026, 10, 4);
const rig = rigOf('travel-trailer');
const state: State<Rig> = fold(kinds, rig, []);
const empty = planAfter(undefined, rig, state, on);

const finding = (id: string, station: string, urgency: Finding['urgency'], title: string): Finding => ({
  id,
  rule: 'trial',
  place: { at: 'station', station, side: 'outside' },
  station,
  raised_by: 'e1',
  since: on,
  last_seen: on,
  title,
  urgency,
  who: urgency === 'before-moving' ? 'professional' : 'yourself',
  because: [{ text: `Seen at ${station} <b>`, entries: [], source: { status: 'practice', text: 'common practice, no published source' } }],
  life: 'open',
  remedies: [],
  cautions: ['ladder'],
});

const found = rig.stations
  .filter((s) => s.group === 'opening')
  .slice(0, 30)
  .map((s, i) => finding(`f${i}`, s.id, (['before-moving', 'before-rain', 'this-season', 'watch'] as const)[i % 4] ?? 'watch', `Trouble ${i}.`));

const plan: Plan = {
  ...empty.plan,
  findings: found,
  jobs: found
    .filter((f) => f.urgency !== 'watch')
    .map((f) => ({
      id: `job/${f.id}`,
      title: f.title,
      ...(f.station === undefined ? {} : { station: f.station }),
      findings: [f.id],
      urgency: f.urgency,
      who: f.who,
      steps: ['take off what is loose', 'clean', 'lay a new bead and let it cure before rain or road'],
      minutes: [20, 60],
      cautions: f.cautions,
      materials: [],
      bead_m: 1.2,
    })),
};

const options = { on, preferences: { system: 'us', units: {} }, by: 'R. Rider', digest: '0123456789abcdef'.repeat(4) } as const;
const steps = walkingOrder(rig, { form: 'full', inside: [] });

const documents = (['A4', 'Letter'] as const).flatMap((paper) => [
  { name: `walk sheet ${paper}`, paper, html: walkSheet(rig, steps, plan, { ...options, paper, state }) },
  { name: `condition record ${paper}`, paper, html: conditionRecord(rig, state, plan, { ...options, paper, marks: empty.marks, round: 'Full round of 3 October 2026' }) },
  { name: `plan ${paper}`, paper, html: planSheet(rig, plan, { ...options, paper }) },
]);

const sheetsOf = (html: string): readonly string[] => html.split('<section class="page">').slice(1);

describe.each(documents)('$name', ({ paper, html }) => {
  it('keeps what was typed as text, runs nothing and fetches nothing', () => {
    expect(html).not.toMatch(/<script|onerror=|src="http|href=|@import|url\(/);
    expect(html).toContain('Plover &lt;script&gt;');
    expect(html).not.toMatch(/NaN|undefined|\[object/);
  });

  it('counts its sheets and ends each in the title block with the digest', () => {
    const sheets = sheetsOf(html);
    sheets.forEach((s, i) => {
      expect(s).toContain(`<b>${i + 1} of ${sheets.length}</b>`);
      expect(s).toContain('01234567 89abcdef 01234567 89abcdef');
    });
    expect(html).toContain(`@page{size:${PAPERS[paper].w}mm ${PAPERS[paper].h}mm`);
  });

  it('fills no sheet beyond its room', () => {
    for (const s of sheetsOf(html)) {
      const sum = [...s.matchAll(/<div class="b" style="height:([\d.]+)mm">/g)].reduce((a, m) => a + Number(m[1]), 0);
      expect(sum).toBeLessThanOrEqual(roomOn(paper).h + 0.5);
    }
  });
});

const named = (start: string): string => documents.find((d) => d.name.startsWith(start))?.html ?? '';

describe('what must not be lost on the way to paper', () => {
  it('is every stop of the walk, each with room for its answer and a circle for not seen', () => {
    const rows = [...named('walk sheet').matchAll(/<div class="r"><span class="n" style="width:8mm">(\d+)<\/span>/g)].map((m) => Number(m[1]));
    expect(rows).toEqual(steps.map((_, i) => i + 1));
    expect(named('walk sheet')).toContain('class="ring"');
    for (const grade of ['S0', 'S1', 'S2', 'S3', 'S4', 'S5']) expect(named('walk sheet')).toContain(`<b>${grade}</b>`);
  });

  it('is every open finding, in the list and, unless it is only watched, with its reasons', () => {
    const html = named('condition record');
    for (const f of plan.findings.filter(isOpen)) expect(html).toContain(`>${f.title}<`);
    for (const f of plan.findings.filter((x) => x.urgency !== 'watch')) expect(html).toContain(`Seen at ${f.station} &lt;b&gt;`);
  });

  it('is every station that was not seen', () => {
    for (const m of numberedMarks(rig, plan).filter((x) => x.mark === 'not-seen')) expect(named('condition record')).toContain(`<b>${m.number}</b>`);
  });

  it('is every job with every step, the warning at the job and what to do about it once', () => {
    const html = named('plan');
    for (const job of plan.jobs) expect(html).toContain(`finding ${numberedMarks(rig, plan).find((m) => m.id === job.findings[0])?.number}`);
    expect((html.match(/1\. take/g) ?? []).length).toBe(plan.jobs.length);
    expect((html.match(/Falls from ladders/g) ?? []).length).toBe(plan.jobs.length + 1);
    expect((html.match(/foot out a quarter of the working length/g) ?? []).length).toBe(1);
  });
});

describe('the scale on paper', () => {
  it('is the one that is written: a metre of the rig is 1000 mm over the scale', () => {
    for (const kind of ['travel-trailer', 'fifth-wheel', 'class-a', 'teardrop'] as const) {
      const r = rigOf(kind);
      const net = netAtScale(r, { ...empty.plan, findings: [], not_seen: [] }, { marks: {}, preferences: options.preferences }, 180, 136);
      const scale = Number(net.scale.slice(2));
      const bars = [...net.svg.matchAll(/<path d="M([\d.]+) ([\d.]+)L([\d.]+) [\d.]+L[\d.]+ [\d.]+L[\d.]+ [\d.]+Z" fill="#000000" stroke="#000000" stroke-width="0.7"/g)];
      const foot = Number(bars[0]?.[3]) - Number(bars[0]?.[1]);
      expect((foot / 96) * 25.4, `${kind} ${net.scale}`).toBeCloseTo(304.8 / scale, 1);
      const width = Number(/width="([\d.]+)mm"/.exec(net.svg)?.[1]);
      expect(width).toBeLessThanOrEqual(180);
    }
  });
});

describe('sheets', () => {
  const block = (mm: number, more: object = {}) => ({ html: String(mm), mm, ...more });

  it('never end in a heading, and repeat column heads only over their rows', () => {
    const head = block(5, { head: true, keep: true });
    const sheets = paginate([head, ...Array.from({ length: 12 }, () => block(10, { row: true })), block(8, { keep: true }), block(30), block(30)], 60);
    for (const s of sheets) expect((s.at(-1) as { keep?: boolean }).keep ?? false).toBe(false);
    expect(sheets[1]?.[0]).toBe(head);
    expect(sheets.at(-1)?.[0]).not.toBe(head);
    expect(sheets.flat().filter((b) => b !== head)).toHaveLength(15);
  });
});
