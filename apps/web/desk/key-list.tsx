import { Over } from '../shared/dialog';

const KEYS: readonly (readonly [string, string])[] = [
  ['/', 'Search the stations'],
  ['n', 'New entry'],
  ['u', 'Take back what was kept last'],
  ['?', 'This list'],
  ['Arrow keys on the drawing', 'Go to the neighbouring station'],
  ['Enter on the drawing', 'Open the station or finding'],
  ['+  −  0 on the drawing', 'Zoom in, zoom out, whole sheet'],
  ['Shift and arrow keys on the drawing', 'Move the sheet'],
  ['Alt and arrow keys while describing', 'Move the chosen part by 10 mm; with Shift by 100 mm'],
  ['Escape', 'Close what stands open'],
];

export const KeyList = ({ close }: { readonly close: () => void }) => (
  <Over label="Keys" close={close}>
    <h2>Keys</h2>
    <dl className="key-list">
      {KEYS.map(([key, what]) => (
        <div key={key}>
          <dt>{key}</dt>
          <dd>{what}</dd>
        </div>
      ))}
    </dl>
    <button type="button" className="button primary" onClick={close}>
      Close
    </button>
  </Over>
);
