import { useMemo } from 'react';
import { kindById } from '../../../src/entries';
import type { Preferences } from '../../../src/units';
import { type LogLine, useLinesOf } from '../shared/every-line';
import { useDesk } from './desk';

export type { LogLine };

/** The entry in words, in the person's own units; the record's own words where the kind cannot say it. */
const said = (line: LogLine, preferences: Preferences): LogLine => {
  const kind = kindById(line.entry.kind);
  if (!kind) return line;
  try {
    return { ...line, words: kind.line(line.body as never, preferences) };
  } catch {
    // A body that a newer version wrote: the session has already put it into words as far as it can.
    return line;
  }
};

/** Every line of the logbook in the person's own units. Undefined until the first answer. */
export const useEveryLine = (): readonly LogLine[] | undefined => {
  const { overview, preferences } = useDesk();
  const lines = useLinesOf(overview);
  return useMemo(() => lines?.map((l) => said(l, preferences)), [lines, preferences]);
};
