import { type QuantityId, quantities, showIn, type UnitSystem } from '../../../src/units';
import { useChangeSettings, useSettings } from '../shared/settings';

/** Quantities that a person reads often enough to choose a unit for; the others follow the system. */
const CHOSEN: readonly QuantityId[] = ['length', 'small-length', 'temperature', 'gauge-pressure', 'volume', 'mass', 'area', 'speed'];

/** A value in SI that shows what each unit looks like. */
const EXAMPLE: Readonly<Partial<Record<QuantityId, number>>> = {
  length: 2.44,
  'small-length': 0.0042,
  temperature: 294.15,
  'gauge-pressure': 448_159,
  volume: 0.0003,
  mass: 1_020,
  area: 1.2,
  speed: 24.6,
};

const SYSTEMS: readonly (readonly [UnitSystem, string, string])[] = [
  ['us', 'US units', 'feet and inches, °F, psi, fl oz, lb'],
  ['metric', 'Metric units', 'metres, °C, kPa, mL, kg'],
];

export const SettingsPage = () => {
  const settings = useSettings();
  const change = useChangeSettings();
  return (
    <main className="desk-page" id="content">
      <header className="page-head">
        <h1>How this device shows and asks</h1>
        <p className="lead">Nothing here changes a logbook: what was typed stays as it was typed. Every choice holds at once.</p>
      </header>
      <div className="columns halves">
        <section>
          <h2 className="group-head">Your name</h2>
          <div className="field-row">
            <label htmlFor="by">Written beside every entry from this device</label>
            <input id="by" type="text" autoComplete="name" maxLength={80} value={settings.by} placeholder="owner" onChange={(e) => change({ by: e.target.value })} />
            <p className="mut small">Left empty, “owner” is written.</p>
          </div>
          <h2 className="group-head">On the phone</h2>
          <Radio
            legend="Hand that holds the phone"
            name="hand"
            value={settings.hand}
            options={[
              ['right', 'Right'],
              ['left', 'Left'],
            ]}
            onChange={(hand) => change({ hand })}
          />
          <Radio
            legend="Photographs"
            name="photos"
            value={settings.photos}
            options={[
              ['original', 'Keep the original', 'as large as the camera made it'],
              ['reduced', 'Keep a reduced copy', 'the original’s hash and time stay in the entry'],
            ]}
            onChange={(photos) => change({ photos })}
          />
          <h2 className="group-head">Screen</h2>
          <Radio
            legend="Light"
            name="theme"
            value={settings.theme}
            options={[
              ['light', 'Light', 'for day and for full sun'],
              ['night', 'Night', 'for the dark only'],
            ]}
            onChange={(theme) => change({ theme })}
          />
          <Radio
            legend="A rig opens with"
            name="view"
            value={settings.view}
            options={[
              ['auto', 'What fits the window', 'the desk from 900 px wide'],
              ['desk', 'The desk'],
              ['field', 'The screens for the hand'],
            ]}
            onChange={(view) => change({ view })}
          />
        </section>
        <section>
          <h2 className="group-head">Units</h2>
          <Radio legend="System" name="system" value={settings.system} options={SYSTEMS} onChange={(system) => change({ system, units: {} })} />
          <h3>Single quantities</h3>
          <p className="mut small">Whatever unit stands here, any other can be typed where a figure is asked for.</p>
          {CHOSEN.map((q) => {
            const value = settings.units[q] ?? quantities[q].usual[settings.system];
            return (
              <label key={q} className="line-field unit-line">
                <span>{quantities[q].meaning}</span>
                <select aria-label={quantities[q].meaning} value={value} onChange={(e) => change({ units: { ...settings.units, [q]: e.target.value } })}>
                  {quantities[q].units.map((u) => (
                    <option key={u.id} value={u.id}>
                      {u.symbol}
                    </option>
                  ))}
                </select>
                <span className="mut">{showIn(EXAMPLE[q] ?? 1, q, value)}</span>
              </label>
            );
          })}
        </section>
      </div>
    </main>
  );
};

const Radio = <T extends string>({
  legend,
  name,
  value,
  options,
  onChange,
}: {
  readonly legend: string;
  readonly name: string;
  readonly value: T;
  readonly options: readonly (readonly [T, string, string?])[];
  readonly onChange: (value: T) => void;
}) => (
  <fieldset className="field-row">
    <legend>{legend}</legend>
    <div className="options">
      {options.map(([id, word, line]) => (
        <label key={id} className="option">
          <input type="radio" name={name} checked={value === id} onChange={() => onChange(id)} />
          <span>
            <b>{word}</b>
            {line !== undefined && <span className="mut">{line}</span>}
          </span>
        </label>
      ))}
    </div>
  </fieldset>
);
