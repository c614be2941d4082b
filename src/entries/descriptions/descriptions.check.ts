import { describe, expect, it } from 'vitest';
import { blankRig, type Rig, type RigKindId, startingLayout } from '../../rig';
import type { AnyKind, Entry, Place } from '../../terms';
import { layoutPlaced, readBody, rigDescribed, rigFacts, setPressure, sizesConfirmed, stationAdded, stationFacts, stationMoved, stationRenamed, stationRetired } from '..';

/**
 * How descriptions change the rig, one after the other, on this project's own starting layouts. No outside source: the
 * witness is that a layout comes back from its entry byte for byte, and that an entry changes what it names and nothing else.
 */
const RIGS: readonly RigKindId[] = ['travel-trailer', 'fifth-wheel', 'class-a', 'class-b', 'class-c', 'truck-camper', 'folding-camper', 'teardrop'];
const answers = { name: 'Heron', skin: 'fibreglass', construction: 'bonded', roof: 'epdm' } as const;

const layoutOf = (kind: RigKindId) => {
  const made = startingLayout({ kind, ...answers });
  if (!made.ok) throw new Error(made.refusals.map((r) => r.sentence).join(' '));
  return made.value.layout;
};

const RIG: Place = { at: 'rig' };
const at = (station: string): Place => ({ at: 'station', station, side: 'outside' });

/** Applies an entry as the logbook does: read first, then applied. */
const tell = (rig: Rig, kind: AnyKind<Rig>, body: unknown, place: Place = RIG): Rig => {
  const read = readBody(kind, JSON.parse(JSON.stringify(body)));
  if (!read.ok) throw new Error(read.refusals.map((r) => r.sentence).join(' '));
  if (kind.fold.mode !== 'describes') throw new Error(`${kind.id} describes nothing`);
  return kind.fold.apply(rig, read.value, place, { body } as Entry);
};

const placed = tell(blankRig('heron'), layoutPlaced, { layout: layoutOf('travel-trailer') });
const first = placed.stations.find((s) => s.looks === 'window' && s.face === 'curb');
if (!first) throw new Error('the travel trailer has a window on its curb side');
const others = (rig: Rig) => rig.stations.filter((s) => s.id !== first.id);

describe('layout-placed', () => {
  it.each(RIGS)('takes the whole layout of %s and gives it back unchanged', (kind) => {
    const layout = layoutOf(kind);
    const rig = tell(blankRig('heron'), layoutPlaced, { layout });
    const { overall, levels, faces, axles, slides, stations } = rig;
    expect(JSON.stringify({ overall, levels, faces, axles, slides, stations })).toBe(
      JSON.stringify({ overall: layout.overall, levels: layout.levels, faces: layout.faces, axles: layout.axles, slides: layout.slides, stations: layout.stations }),
    );
  });
});

describe('what is said about the rig', () => {
  it('is its name, kind, year and coverings', () => {
    const rig = tell(placed, rigDescribed, {
      name: 'Wren',
      kind: 'class-b',
      year: { typed: '2014', unit: 'count', si: 2014 },
      skin: 'painted-steel',
      construction: 'moulded',
      roof: 'painted-steel',
    });
    expect(rig).toMatchObject({ name: 'Wren', kind: 'class-b', year: 2014, skin: 'painted-steel', construction: 'moulded', roof: 'painted-steel' });
    expect(rig.stations).toEqual(placed.stations);
  });

  it('a size measured is confirmed, and all three make the whole confirmed', () => {
    const width = { typed: '2.4', unit: 'm', si: 2.4 };
    const some = tell(placed, sizesConfirmed, { width });
    expect(some.overall.width_m).toBe(2.4);
    expect(some.overall_certainty).toBe('typical');
    const all = tell(some, sizesConfirmed, { length: { typed: '9', unit: 'm', si: 9 }, height: { typed: '3,2', unit: 'm', si: 3.2 } });
    expect(all.overall_certainty).toBe('confirmed');
    expect(all.confirmed.toSorted()).toEqual(['height_m', 'length_m', 'width_m']);
  });

  it('set pressures are kept axle by axle', () => {
    const one = tell(placed, setPressure, { axle: 'A1', pressure: { typed: '450', unit: 'kpa', si: 450_000 }, temperature: { typed: '20', unit: 'c', si: 293.15 } });
    const two = tell(one, setPressure, { axle: 'A2', pressure: { typed: '4', unit: 'bar', si: 400_000 } });
    expect(two.set_pressure_pa).toEqual({ A1: 450_000, A2: 400_000 });
    expect(two.set_temperature_k).toBe(293.15);
    expect(two.set_altitude_m).toBeUndefined();
  });

  it('facts not given stay as they were', () => {
    const one = tell(placed, rigFacts, { roof_walkable: 'no' });
    const two = tell(one, rigFacts, { warranty_months: { typed: '3', unit: 'months', si: 3 } });
    expect(two).toMatchObject({ roof_walkable: 'no', warranty_months: 3 });
  });
});

describe('what is said about a station', () => {
  it('leaves every other station alone', () => {
    for (const rig of [
      tell(placed, stationRenamed, { name: 'Galley window' }, at(first.id)),
      tell(placed, stationRetired, {}, at(first.id)),
      tell(placed, stationFacts, { sealed_with: 'silicone', last_sealed: '2022-05-14' }, at(first.id)),
      tell(placed, stationMoved, { shape: { form: 'rect', x_m: 1, y_m: 1, w_m: 0.5, h_m: 0.5 } }, at(first.id)),
    ]) {
      expect(others(rig)).toEqual(others(placed));
      expect(rig.stations.find((s) => s.id === first.id)).not.toEqual(first);
    }
  });

  it('about a station that the rig does not have changes nothing', () => {
    expect(tell(placed, stationRenamed, { name: 'Nowhere' }, at('no.such.station')).stations).toEqual(placed.stations);
  });

  it('moved: bead, outline and height follow from the new shape', () => {
    const low = tell(placed, stationMoved, { shape: { form: 'rect', x_m: 1, y_m: 1, w_m: 0.5, h_m: 0.4 }, size: 'confirmed' }, at(first.id));
    expect(low.stations.find((s) => s.id === first.id)).toMatchObject({ top_m: 1.4, reach: 'ground', outline_m: 1.8, bead_m: 0.8, size: 'confirmed' });
    const high = tell(placed, stationMoved, { shape: { form: 'rect', x_m: 1, y_m: 2, w_m: 0.5, h_m: 0.4 } }, at(first.id));
    expect(high.stations.find((s) => s.id === first.id)).toMatchObject({ top_m: 2.4, reach: 'ladder', size: first.size });
  });

  it('added: once, however often the same station is told', () => {
    const station = { ...first, id: 'curb.window.added-1' };
    const rig = tell(tell(placed, stationAdded, { station }), stationAdded, { station: { ...station, name: 'Bunk window' } });
    expect(rig.stations.filter((s) => s.id === station.id)).toEqual([{ ...station, name: 'Bunk window' }]);
    expect(rig.stations.length).toBe(placed.stations.length + 1);
  });
});
