import { type SheetMark, svgText, wheelPlan } from '../../drawing';
import { kindById } from '../../entries';
import type { Standing, State } from '../../logbook';
import type { Rig } from '../../rig';
import { type Mark, placeKey, type StationId } from '../../terms';
import { type Preferences, showDay } from '../../units';
import { type Block, e } from './sheet-page';

const latest = (state: State<Rig>, station: StationId, kind: string): Standing | undefined => state.latest.get(placeKey({ at: 'station', station, side: 'outside' }))?.get(kind);

/** The first clause of what was recorded, in the person's units: `54 psi`. */
const clause = (standing: Standing, preferences: Preferences): string =>
  kindById(standing.entry.kind)
    ?.line(standing.body as never, preferences)
    .split(',')[0] ?? '';

const PLAN_MM = 78;
const MM_PX = 96 / 25.4;

/** The axles from above with the pressures last read, and one line for each wheel; nothing where the rig has no wheels of its own. */
export const wheelsBlock = (
  rig: Rig,
  state: State<Rig>,
  numbered: readonly SheetMark[],
  marks: Readonly<Record<StationId, Mark>>,
  preferences: Preferences,
  width: number,
): readonly Block[] => {
  const wheels = rig.stations.filter((s) => s.part === 'tyre' && !s.retired);
  if (wheels.length === 0) return [];
  const pressures = new Map(
    wheels.flatMap((w) => {
      const read = latest(state, w.id, 'tyre-pressure');
      return read ? [[w.id, read] as const] : [];
    }),
  );
  const words = Object.fromEntries([...pressures].map(([id, read]) => [id, clause(read, preferences)]));
  const first = (id: StationId): number | undefined => numbered.find((m) => m.station === id)?.number;
  const whole = wheelPlan(rig, { marks, words, type_px: 10, heavy: true });
  const plan = wheelPlan(rig, { marks, words, type_px: 10, heavy: true, px: (PLAN_MM * MM_PX) / whole.width });
  const rest = width - PLAN_MM - 6;
  const [name, read] = [rest * 0.5, rest * 0.28];
  const rows = wheels.map((w) => {
    const pressure = pressures.get(w.id);
    const code = latest(state, w.id, 'tyre-date-code');
    const number = first(w.id);
    return `<div class="r" style="height:6.2mm"><span style="width:${name}mm"><b>${number === undefined ? '' : `${number} `}</b>${e(w.name.replace(/^Tyre, /, ''))}</span><span style="width:${read}mm">${pressure ? `${e(clause(pressure, preferences))}<br><small>${e(showDay(pressure.day, true))}</small>` : '<span class="line" style="width:16mm"></span>'}</span><span class="s">${code ? e(clause(code, preferences).replace(/^date code /i, '')) : ''}</span></div>`.replace(
      'height:6.2mm',
      pressure ? 'height:9mm' : 'height:7mm',
    );
  });
  const list = `<div class="heads" style="height:6mm"><span style="width:${name}mm">Wheel</span><span style="width:${read}mm">As read</span><span>Date code</span></div>${rows.join('')}`;
  const mm = Math.max((plan.height * plan.px) / MM_PX, 6 + rows.length * 9);
  return [
    {
      html: `<h3 style="padding-top:3.5mm">Wheels</h3><div style="display:flex;gap:6mm"><div style="width:${PLAN_MM}mm;flex:none;line-height:0">${svgText(plan, { theme: 'paper', inline: true })}</div><div style="width:${rest}mm">${list}</div></div>`,
      mm: mm + 9,
    },
  ];
};
