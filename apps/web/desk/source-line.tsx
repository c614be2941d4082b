import type { Source } from '../../../src/terms';
import { upperFirst } from './desk';

const STATUS: Readonly<Record<Source['status'], string>> = { seen: '', practice: '', memory: '', own: 'Our own proposal: ' };

/** Where something comes from, on one grey line. An address is shown as text: the page works without a signal. */
export const SourceLine = ({ source }: { readonly source: Source }) => (
  <p className="mut small source">
    {upperFirst(/^our own/i.test(source.text) ? source.text : `${STATUS[source.status]}${source.text}`)}
    {source.address === undefined ? '' : `, ${source.address}`}
  </p>
);
