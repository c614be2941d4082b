import type { Plan } from '../../../../src/plan';

/** What to take or to buy: how many packages, of what, and why so many. */
export const MaterialRows = ({ materials }: { readonly materials: Plan['shopping'] }) => (
  <ul className="rows">
    {materials.map((m) => (
      <li key={`${m.material} ${m.words}`}>
        <div className="row">
          <b className="number">{m.packages}</b>
          <span>
            <b>{m.words}</b>
            {m.package_words}. {m.because}
          </span>
          <span />
        </div>
      </li>
    ))}
  </ul>
);
