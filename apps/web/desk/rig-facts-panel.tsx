import type { Axle, Rig } from '../../../src/rig';
import { WHOLE_RIG } from '../../../src/terms';
import { fromSi, type Preferences, type QuantityId, show, usualUnit } from '../../../src/units';
import { DescriptionForm } from './description-form';
import { useDesk } from './desk';
import type { Writing } from './field-form';

const writing = (si: number | undefined, quantity: QuantityId, preferences: Preferences, decimals: number): Writing | undefined => {
  if (si === undefined) return undefined;
  const unit = usualUnit(quantity, preferences);
  return { text: String(Number(fromSi(si, quantity, unit).toFixed(decimals))), unit };
};

const there = (answers: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> => Object.fromEntries(Object.entries(answers).filter(([, v]) => v !== undefined));

/** What is known about the rig as a whole, each group with its own form. */
export const RigFactsPanel = () => {
  const { overview, preferences } = useDesk();
  const { rig } = overview;
  return (
    <>
      <section>
        <h2 className="group-head">
          Its sizes <span className="mut">{rig.overall_certainty === 'typical' ? 'typical, measure yours' : 'measured'}</span>
        </h2>
        <Sizes rig={rig} preferences={preferences} />
        <details>
          <summary>I have measured</summary>
          <DescriptionForm key={`sizes${overview.entries}`} kindId="sizes-confirmed" place={WHOLE_RIG} stands={{}} words="These are measured" said="The sizes were confirmed." />
        </details>
      </section>
      <section>
        <h2 className="group-head">What it is made of</h2>
        <DescriptionForm
          key={`made${overview.entries}`}
          kindId="rig-described"
          place={WHOLE_RIG}
          whole
          stands={there({
            name: rig.name,
            kind: rig.kind,
            year: rig.year === 'unknown' ? undefined : { text: String(rig.year), unit: 'count' },
            skin: rig.skin,
            construction: rig.construction,
            roof: rig.roof,
          })}
          words="Keep this"
          said="What it is made of was written down."
        />
      </section>
      <section>
        <h2 className="group-head">Roof and warranty</h2>
        <DescriptionForm
          key={`facts${overview.entries}`}
          kindId="rig-facts"
          place={WHOLE_RIG}
          stands={there({ roof_walkable: rig.roof_walkable, warranty_months: writing(rig.warranty_months, 'months', preferences, 0) })}
          words="Keep this"
          said="What is known was written down."
        />
      </section>
      {rig.axles.filter((a) => !a.host_vehicle).length > 0 && (
        <section>
          <h2 className="group-head">
            Pressure to set <span className="mut">cold, by axle</span>
          </h2>
          {rig.axles
            .filter((a) => !a.host_vehicle)
            .map((a, i) => (
              <AxlePressure key={`${a.id}${overview.entries}`} axle={a} number={i + 1} rig={rig} preferences={preferences} />
            ))}
        </section>
      )}
    </>
  );
};

const SIZES = [
  ['length_m', 'Length over all'],
  ['body_length_m', 'Length of the body'],
  ['width_m', 'Width'],
  ['height_m', 'Height'],
] as const;

const Sizes = ({ rig, preferences }: { readonly rig: Rig; readonly preferences: Preferences }) => (
  <dl className="facts">
    {SIZES.map(([key, word]) => (
      <div key={key}>
        <dt>
          {word}
          {rig.confirmed.includes(key) ? '' : ', typical'}
        </dt>
        <dd>{show(rig.overall[key], 'length', preferences)}</dd>
      </div>
    ))}
  </dl>
);

const AxlePressure = ({ axle, number, rig, preferences }: { readonly axle: Axle; readonly number: number; readonly rig: Rig; readonly preferences: Preferences }) => {
  const set = rig.set_pressure_pa[axle.id];
  return (
    <details open={set === undefined}>
      <summary>
        Axle {number} of {rig.axles.filter((a) => !a.host_vehicle).length}, {axle.tyre}:{' '}
        {set === undefined ? 'not known, so no tyre on it can be judged' : show(set, 'gauge-pressure', preferences)}
      </summary>
      <DescriptionForm
        kindId="set-pressure"
        place={WHOLE_RIG}
        whole
        hidden={['axle']}
        stands={there({
          axle: axle.id,
          pressure: writing(set, 'gauge-pressure', preferences, 1),
          temperature: writing(rig.set_temperature_k, 'temperature', preferences, 1),
          altitude: writing(rig.set_altitude_m, 'length', preferences, 0),
        })}
        words="Set it"
        said={`The pressure to set on axle ${number} was written down.`}
      />
    </details>
  );
};
