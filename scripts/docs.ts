import { readFileSync, writeFileSync } from 'node:fs';
import { agreementTable } from '../checks/agreements';
import { worksheetDocs } from '../checks/worksheet-docs';

/** Writes what the documents take from declarations: the page of worksheets, and README's agreement table. */
const at = (path: string): URL => new URL(`../${path}`, import.meta.url);

writeFileSync(at('docs/worksheets.md'), worksheetDocs());

const readme = readFileSync(at('README.md'), 'utf8');
const shown = readme.replace(/(<!-- scores -->\n)[\s\S]*?(\n<!-- \/scores -->)/, (_all, open: string, close: string) => `${open}${agreementTable()}${close}`);
if (shown !== readme) writeFileSync(at('README.md'), shown);
