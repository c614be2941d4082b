import { readFileSync, writeFileSync } from 'node:fs';
import { agreementTable } from '../checks/agreements';
import { worksheetDocs } from '../checks/worksheet-docs';

/** Writes what the documents take from declarations and files: the page of worksheets, README's agreement table, and quoted files. */
const at = (path: string): URL => new URL(`../${path}`, import.meta.url);

writeFileSync(at('docs/worksheets.md'), worksheetDocs());

const readme = readFileSync(at('README.md'), 'utf8');
const shown = readme.replace(/(<!-- scores -->\n)[\s\S]*?(\n<!-- \/scores -->)/, (_all, open: string, close: string) => `${open}${agreementTable()}${close}`);
if (shown !== readme) writeFileSync(at('README.md'), shown);

const contributing = readFileSync(at('CONTRIBUTING.md'), 'utf8');
const quoted = contributing.replace(
  /(<!-- file: (\S+) -->\n```\w*\n)[\s\S]*?(\n```)/g,
  (_all, open: string, path: string, close: string) => `${open}${readFileSync(at(path), 'utf8').trim()}${close}`,
);
if (quoted !== contributing) writeFileSync(at('CONTRIBUTING.md'), quoted);
