import { troubleOf } from '../../../src/adapters/trouble';
import { SPOKEN } from './spoken-name';

const said = (error: unknown): Error => {
  const trouble = troubleOf(error);
  if (!trouble) return error instanceof Error ? error : new Error(String(error));
  const spokenError = new Error(JSON.stringify(trouble));
  spokenError.name = SPOKEN;
  return spokenError;
};

/** Between worker and page an error keeps only its name and message; the words of a trouble go along as its message. */
export const spoken = <T extends object>(session: T): T =>
  Object.fromEntries(
    Object.entries(session).map(([name, method]) => [
      name,
      async (...given: readonly unknown[]) => {
        try {
          return await (method as (...given: readonly unknown[]) => Promise<unknown>)(...given);
        } catch (error) {
          throw said(error);
        }
      },
    ]),
  ) as T;
