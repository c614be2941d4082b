import { useEffect, useState } from 'react';
import type { LogbookPage } from '../session/session';
import { useDesk } from './desk';

export type LogLine = LogbookPage['lines'][number];

const CHUNK = 500;

/** Every line of the logbook, asked for in pieces and asked again after each change. Undefined until the first answer. */
export const useEveryLine = (): readonly LogLine[] | undefined => {
  const { id, session, overview } = useDesk();
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
  return lines;
};
