import { median, scaledMad } from '../science';
import { defineWorksheet, memory, ours, seen } from '../terms';
import { accept, figure } from '../units';
import { listed } from './trend-inputs';
import { step } from './working';

/** Fewer say little about a place: the trade takes seven to ten. */
const USUAL = 7;
const SUSPICIOUS = 3;
const WET = 6;

const points = (meaning: string, decimals = 2) => ({ type: 'number', quantity: 'number', unit: 'number', meaning, decimals }) as const;

export const dryReference = defineWorksheet({
  id: 'dry-reference',
  title: 'Dry reference of a panel',
  tells: 'What this meter shows today on a dry part of the same wall, and how far above it a reading must lie to mean something.',
  example: { readings_number: [12, 13, 11.5, 12.5, 12, 14, 12.2] },
  inputs: {
    readings_number: {
      type: 'numbers',
      quantity: 'number',
      unit: 'number',
      meaning: 'readings at dry places of the same build, in the meter’s own points',
      limits: { least: 0, most: 1000 },
      least: 3,
      most: 60,
    },
    floor_number: {
      type: 'number',
      quantity: 'number',
      unit: 'number',
      meaning: 'the least scatter to reckon with, because a meter’s last digit hides it',
      limits: { least: 0.01, most: 50 },
      otherwise: 0.5,
    },
  },
  results: {
    reference_number: points('the dry reference: the middle reading'),
    scatter_number: points('how far the readings scatter', 3),
    spread_number: points('the scatter reckoned with: not below the floor'),
    suspicious_number: points('readings above this are suspicious', 1),
    wet_number: points('readings above this are wet', 1),
  },
  calculate: ({ readings_number, floor_number }) => {
    const reference = median(readings_number);
    const scatter = scaledMad(readings_number);
    const spread = Math.max(scatter, floor_number);
    const above = (times: number): number => reference + times * spread;
    return accept({
      result: { reference_number: reference, scatter_number: scatter, spread_number: spread, suspicious_number: above(SUSPICIOUS), wet_number: above(WET) },
      working: [
        step('Middle reading', 'median', listed(readings_number, 1), figure(reference, 2)),
        step('Scatter', '1.4826 × median of the distances from it', '', figure(scatter, 3)),
        step('Scatter reckoned with', 'the greater of scatter and floor', `${figure(scatter, 3)} and ${figure(floor_number, 2)}`, figure(spread, 2)),
        step('Suspicious above', 'reference + 3 × scatter', `${figure(reference, 2)} + 3 × ${figure(spread, 2)}`, figure(above(SUSPICIOUS), 1)),
        step('Wet above', 'reference + 6 × scatter', `${figure(reference, 2)} + 6 × ${figure(spread, 2)}`, figure(above(WET), 1)),
      ],
      remarks: readings_number.length < USUAL ? [`Only ${readings_number.length} readings: seven to ten are usual.`] : [],
    });
  },
  sources: [
    seen('R 4.2.2, median() and mad(), run on the cases'),
    memory('Seven to ten readings at a place of the same build with no opening within about 0.6 m above'),
    ours('Suspicious above three times the scatter, wet above six times; a floor of half a point for pin meters'),
  ],
  limits: [
    'Same panel, same meter, same day. Never mix pin, pinless and relative scales in one list.',
    'The steps of three and six are ours, not a standard.',
    'A wall that is damp all over makes a damp reference: hold it against the equilibrium moisture of the air too.',
  ],
  cautions: ['Wires, cables and gas lines run in walls. Unplug the rig and use short pins.'],
});
