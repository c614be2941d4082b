import { readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** One deliberate mistake: in `file`, the one place that reads `find` is made to read `replace`. `checks` must then turn red. */
export type Fault = { readonly name: string; readonly file: string; readonly find: string; readonly replace: string; readonly checks: readonly string[] };

export const faults = (): readonly Fault[] => JSON.parse(readFileSync(join(root, 'checks', 'planted-faults.json'), 'utf8')) as readonly Fault[];

/** Plants the named fault while modules are loaded; the file on disk is never touched. */
export const plantedFault = (name: string | undefined): Plugin => {
  const fault = name === undefined ? undefined : faults().find((f) => f.name === name);
  if (name !== undefined && fault === undefined) throw new Error(`No planted fault is called ${name}`);
  return {
    name: 'planted-fault',
    enforce: 'pre',
    transform(code, id) {
      if (fault === undefined || relative(root, id.split('?')[0] ?? id) !== fault.file) return undefined;
      if (code.split(fault.find).length !== 2) throw new Error(`${fault.name}: “${fault.find}” must stand exactly once in ${fault.file}`);
      return { code: code.replace(fault.find, () => fault.replace), map: null };
    },
  };
};
