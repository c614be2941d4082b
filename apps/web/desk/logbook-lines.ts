import { useEffect, useMemo, useState } from 'react';
import { kindById } from '../../../src/entries';
import type { Preferences } from '../../../src/units';
import type { LogbookPage } from '../session/session';
import { useDesk } from './desk';

export type LogLine = LogbookPage['lines'][number];

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

const CHUNK = 500;

/** Every line of the logbook, asked for in pieces and asked again after each change. Undefined until the first answer. */
export const useEveryLine = (): readonly LogLine[] | undefined => {
  const { id, session, overview, preferences } = useDesk();
  const [lines, setLines] = useState<readonly LogLine[]>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new overview means that the logbook has changed
  useEffect(() => {
    let gone = false;
    const ask = async () => {
      const all: LogLine[] = [];
      for (let from = 0; ; from += CHUNK) {
        const page = await session.logbook(id, from, CHUNK);
        if (gone) return;
        all.push(...page.lines);
        if (page.lines.length === 0 || all.length >= page.total) break;
      }
      setLines(all);
    };
    ask().catch(() => setLines((l) => l ?? []));
    return () => {
      gone = true;
    };
  }, [session, id, overview]);
  return useMemo(() => lines?.map((l) => said(l, preferences)), [lines, preferences]);
};
