import { useEffect, useState } from 'react';
import type { LogbookPage, Overview } from '../session/session';
import { useSession } from '../session/use-session';

export type LogLine = LogbookPage['lines'][number];

const CHUNK = 500;

/** Every line of a rig's logbook as the record words it, asked for in pieces and asked again after each change. Undefined until the first answer. */
export const useLinesOf = (overview: Overview): readonly LogLine[] | undefined => {
  const session = useSession();
  const { id } = overview.rig;
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
