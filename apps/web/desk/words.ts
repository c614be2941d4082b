import { kindById } from '../../../src/entries';
import type { RigKindId } from '../../../src/rig';
import type { Field, Option } from '../../../src/terms';

const optionsOf = (kind: string, field: string): readonly Option[] => {
  const f = (kindById(kind)?.fields as Readonly<Record<string, Field>> | undefined)?.[field];
  return f && (f.type === 'choice' || f.type === 'many') && f.options !== 'defects-of-station' ? f.options : [];
};

/** The word of an answer, as its kind declares it; the id itself where none is known. */
export const optionWord = (kind: string, field: string, id: string): string => optionsOf(kind, field).find((o) => o.id === id)?.word ?? id;

export const kindWord = (kind: RigKindId): string => optionWord('rig-described', 'kind', kind);
