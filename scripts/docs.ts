import { writeFileSync } from 'node:fs';
import { worksheetDocs } from '../checks/worksheet-docs';

/** Writes the pages of docs that are made from declarations. */
writeFileSync(new URL('../docs/worksheets.md', import.meta.url), worksheetDocs());
