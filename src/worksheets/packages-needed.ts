import { CARTRIDGE, sealantVolume, wetSection, wholePackages } from '../science';
import { COMMON_PRACTICE, defineWorksheet, seen } from '../terms';
import { accept, metres, share, showIn, squareMetres } from '../units';
import { put, step } from './working';

export const packagesNeeded = defineWorksheet({
  id: 'packages-needed',
  title: 'Packages of sealant needed',
  tells: 'How many cartridges to buy for a bead of this section and length.',
  example: { section_mm2: 100, length_m: 23.2 },
  inputs: {
    section_mm2: { type: 'number', quantity: 'area', unit: 'mm2', meaning: 'section of the dry bead', limits: { least: 0.5e-6, most: 0.005 } },
    length_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'length of bead together', limits: { least: 0, most: 500 } },
    waste_percent: {
      type: 'number',
      quantity: 'share',
      unit: 'percent',
      meaning: 'on top, for what stays in nozzle, corners and rag: 5 for a smooth new joint, 10 as a rule, 13 by one sheet’s yield, 15 with stops, tooling and overhead work',
      limits: { least: 0, most: 1 },
      otherwise: 15,
    },
    solids_percent: {
      type: 'number',
      quantity: 'share',
      unit: 'percent',
      meaning: 'share of the wet volume that stays; 100 for a sealant that cures without shrinking',
      limits: { least: 0.2, most: 1 },
      otherwise: 100,
    },
    package_ml: {
      type: 'number',
      quantity: 'volume',
      unit: 'ml',
      meaning: 'content of one package; 10.1 fl oz unless another is given',
      limits: { least: 20e-6, most: 0.02 },
      otherwise: 298.7,
    },
  },
  results: {
    packages_count: { type: 'number', quantity: 'count', unit: 'count', meaning: 'whole packages', decimals: 0 },
    volume_ml: { type: 'number', quantity: 'volume', unit: 'ml', meaning: 'sealant to lay, waste included', decimals: 0 },
    length_per_package_m: { type: 'number', quantity: 'length', unit: 'm', meaning: 'bead from one package, waste included', decimals: 1 },
  },
  calculate: (g) => {
    const wet = wetSection(squareMetres(g.section_mm2), share(g.solids_percent));
    const volume = sealantVolume(wet, metres(g.length_m), share(g.waste_percent));
    const packages = wholePackages(volume, g.package_ml);
    const mm2 = put(wet, 'area', 'mm2', 1);
    const ml = (si: number): string => put(si, 'volume', 'ml', 1);
    return accept({
      result: { packages_count: packages, volume_ml: volume, length_per_package_m: g.package_ml / (wet * (1 + g.waste_percent)) },
      working: [
        step('To lay wet', 'A / solids by volume', `${put(g.section_mm2, 'area', 'mm2', 1)} mm² / ${put(g.solids_percent, 'share', 'fraction', 2)}`, `${mm2} mm²`),
        step(
          'Volume',
          'V = A L (1 + waste)',
          `${mm2} mm² × ${put(g.length_m, 'length', 'm', 2)} m × ${put(1 + g.waste_percent, 'share', 'fraction', 2)}`,
          `${showIn(volume, 'volume', 'ml')}`,
        ),
        step('Packages', 'V / content, rounded up', `${ml(volume)} / ${ml(g.package_ml)}`, String(packages)),
      ],
      remarks: g.package_ml === CARTRIDGE ? ['Labels round this cartridge to 300 mL.'] : [],
    });
  },
  sources: [
    seen('Worked rows of a public sealant calculator; package contents by exact conversion and a distributor’s list'),
    seen('Allowance: 5 to 10 % on public calculators; one data sheet’s yield implies 13 %'),
    COMMON_PRACTICE,
  ],
  limits: [
    'Opened moisture-curing cartridges do not keep: round up for each visit, not for the year.',
    'Coverage charts on the web cannot be trusted; one is out by a factor of two.',
  ],
  cautions: [
    'Solvent-borne sealants give off flammable vapour that is heavier than air: work outdoors or aired, pilot lights and appliances off, gloves on.',
    'Uncured polyurethane can make skin and lungs allergic for good: gloves, long sleeves, air.',
  ],
});
