import { clearSkyOver, onFaces, sunAt, underCloud } from '../science';
import { defineWorksheet, ours, seen } from '../terms';
import { accept, metres, radians, share } from '../units';
import { cloudInput, headingInput, inDegrees, lightInputs, rigFaces, SUN_LIMITS, siteFrom, siteInputs, spreadStep, timeFrom, timeInput, turbidityInput, watts } from './sun-inputs';
import { step } from './working';

const light = (meaning: string) => ({ type: 'number', quantity: 'irradiance', unit: 'wm2', meaning, decimals: 0 }) as const;
const looksTo = (meaning: string) => ({ type: 'number', quantity: 'angle', unit: 'deg', meaning, decimals: 0 }) as const;

export const sunOnRig = defineWorksheet({
  id: 'sun-on-rig',
  title: 'Sunlight on a parked rig',
  tells: 'How much sunlight roof and sides get at a moment, by the way the nose points, without clouds or under them.',
  example: { latitude_deg: 33.45, longitude_deg: -112.07, altitude_m: 340, utc: '2026-06-21T13:30:00Z', heading_deg: 0 },
  inputs: {
    ...siteInputs,
    utc: timeInput('the moment; for an hour take its middle', '2026-06-21T06:30:00-07:00'),
    heading_deg: headingInput,
    turbidity_number: turbidityInput,
    cloud_percent: cloudInput,
    ...lightInputs,
  },
  results: {
    roof_wm2: light('on a level roof'),
    front_wm2: light('on an upright front'),
    curb_wm2: light('on the curb side, right of travel'),
    rear_wm2: light('on the rear'),
    road_wm2: light('on the road side, left of travel'),
    global_wm2: light('on level ground'),
    direct_wm2: light('straight from the sun, on a plane that faces it'),
    diffuse_wm2: light('from the whole sky, on level ground'),
    front_looks_deg: looksTo('the way the front looks'),
    curb_looks_deg: looksTo('the way the curb side looks'),
    rear_looks_deg: looksTo('the way the rear looks'),
    road_looks_deg: looksTo('the way the road side looks'),
  },
  calculate: (i) => {
    const at = timeFrom('utc', i.utc);
    if (!at.ok) return at;
    const sun = sunAt(at.value, siteFrom(i));
    if (!sun.ok) return sun;
    const over = clearSkyOver({ altitude: metres(i.altitude_m), turbidity: i.turbidity_number });
    if (!over.ok) return over;
    const s = sun.value;
    const sky = underCloud(over.value(s), s.up, share(i.cloud_percent));
    if (!sky.ok) return sky;
    const { looks, faces } = rigFaces(radians(i.heading_deg));
    const on = onFaces(s, sky.value, i.ground_percent, i.sky);
    const [roof = 0, front = 0, curb = 0, rear = 0, road = 0] = faces.map((f) => on(f).total);
    const { global, direct, diffuse } = sky.value;
    return accept({
      result: {
        roof_wm2: roof,
        front_wm2: front,
        curb_wm2: curb,
        rear_wm2: rear,
        road_wm2: road,
        global_wm2: global,
        direct_wm2: direct,
        diffuse_wm2: diffuse,
        front_looks_deg: looks.front,
        curb_looks_deg: looks.curb,
        rear_looks_deg: looks.rear,
        road_looks_deg: looks.road,
      },
      working: [
        step('The sun', 'see the worksheet sun-position', i.utc.trim(), `${inDegrees(s.apparent_elevation, 1)} high, towards ${inDegrees(s.azimuth, 1)}`),
        step(
          'Through air and cloud',
          'see the worksheet clear-sky',
          '',
          `${watts(direct)} straight from the sun, ${watts(diffuse)} from the sky, ${watts(global)} on level ground`,
        ),
        step(
          'The way the sides look',
          'nose, nose + 90°, + 180°, + 270°',
          `nose ${inDegrees(i.heading_deg, 0)}`,
          `curb side ${inDegrees(looks.curb, 0)}, rear ${inDegrees(looks.rear, 0)}, road side ${inDegrees(looks.road, 0)}`,
        ),
        spreadStep(
          i.sky,
          'for each face; see the worksheet sun-on-face',
          `roof ${watts(roof)}, front ${watts(front)}, curb side ${watts(curb)}, rear ${watts(rear)}, road side ${watts(road)}`,
        ),
      ],
      remarks: s.up <= 0 ? ['The sun is below the horizon.'] : [],
    });
  },
  sources: [
    seen('As the worksheets sun-position, clear-sky and sun-on-face; 51 hours of roof and sides by an independent implementation'),
    ours('Roof level, sides upright: a crown of 1 to 3° changes the light on a roof by about 1 %'),
  ],
  limits: [...SUN_LIMITS, 'A wrong heading by 10° moves the light on a side by a tenth over a day, and much more in an hour when the sun grazes it.'],
  cautions: [],
});
