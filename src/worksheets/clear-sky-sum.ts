import { clearSkyOver, sunSum } from '../science';
import { defineWorksheet, seen } from '../terms';
import { accept, figure, metres, radians, seconds } from '../units';
import { headingInput, lightInputs, rigFaces, SUN_LIMITS, siteFrom, siteInputs, timeFrom, timeInput, turbidityInput } from './sun-inputs';
import { step } from './working';

const sum = (meaning: string) => ({ type: 'number', quantity: 'irradiation', unit: 'mjm2', meaning, decimals: 1 }) as const;
const mega = (joules: number): string => `${figure(joules / 1e6, 1)} MJ/m²`;

export const clearSkySum = defineWorksheet({
  id: 'clear-sky-sum',
  title: 'Sunlight on a parked rig over a time, without clouds',
  tells: 'The most sunlight that roof and sides can have had while a rig stood in one place with one heading.',
  example: { latitude_deg: 33.45, longitude_deg: -112.07, altitude_m: 340, from: '2026-06-21T15:00:00Z', to: '2026-06-21T21:00:00Z', heading_deg: 270 },
  inputs: {
    ...siteInputs,
    from: timeInput('from when', '2026-06-21T15:00:00Z'),
    to: timeInput('till when', '2026-06-21T21:00:00Z'),
    heading_deg: headingInput,
    turbidity_number: turbidityInput,
    ...lightInputs,
    step_min: { type: 'number', quantity: 'duration', unit: 'min', meaning: 'length of a step, the sun taken at its middle', limits: { least: 60, most: 3600 }, otherwise: 30 },
  },
  results: {
    roof_mjm2: sum('on a level roof'),
    front_mjm2: sum('on an upright front'),
    curb_mjm2: sum('on the curb side, right of travel'),
    rear_mjm2: sum('on the rear'),
    road_mjm2: sum('on the road side, left of travel'),
    global_mjm2: sum('on level ground'),
    direct_mjm2: sum('straight from the sun, on a plane that always faces it'),
    diffuse_mjm2: sum('from the whole sky, on level ground'),
    outside_air_mjm2: sum('on level ground if there were no air'),
    sunlit_h: { type: 'number', quantity: 'duration', unit: 'h', meaning: 'how long the sun was up', decimals: 1 },
  },
  calculate: (i) => {
    const [from, to] = [timeFrom('from', i.from), timeFrom('to', i.to)];
    if (!from.ok) return from;
    if (!to.ok) return to;
    const sky = clearSkyOver({ altitude: metres(i.altitude_m), turbidity: i.turbidity_number });
    if (!sky.ok) return sky;
    const { faces } = rigFaces(radians(i.heading_deg));
    const found = sunSum({ site: siteFrom(i), from: from.value, to: to.value, step: seconds(i.step_min), sky: sky.value, faces, albedo: i.ground_percent, model: i.sky });
    if (!found.ok) return found;
    const s = found.value;
    const [roof = 0, front = 0, curb = 0, rear = 0, road = 0] = s.faces;
    return accept({
      result: {
        roof_mjm2: roof,
        front_mjm2: front,
        curb_mjm2: curb,
        rear_mjm2: rear,
        road_mjm2: road,
        global_mjm2: s.global,
        direct_mjm2: s.direct,
        diffuse_mjm2: s.diffuse,
        outside_air_mjm2: s.outside_air,
        sunlit_h: s.sunlit,
      },
      working: [
        step('Steps', 'the sun at the middle of each stands for all of it', `steps of ${figure(i.step_min / 60, 0)} min`, `sun up for ${figure(s.sunlit / 3600, 1)} h`),
        step('On level ground', 'Σ light × step', '', `${mega(s.global)}, of it ${mega(s.diffuse)} from the sky; ${mega(s.outside_air)} without any air`),
        step(
          'On the rig',
          'Σ light × step, each face as in the worksheet sun-on-rig',
          '',
          `roof ${mega(roof)}, front ${mega(front)}, curb side ${mega(curb)}, rear ${mega(rear)}, road side ${mega(road)}`,
        ),
      ],
      remarks: ['Without clouds this is a ceiling: in a cloudy place a south wall gets half of it, and a north wall more than is shown here.'],
    });
  },
  sources: [seen('As the worksheet sun-on-rig; years and months of seven places by an independent implementation, in 5-minute steps')],
  limits: [...SUN_LIMITS, 'No clouds at all. Against weather files the clear sky alone is 36 to 126 % too high on sunlit faces and up to 23 % too low on a north wall.'],
  cautions: [],
});
