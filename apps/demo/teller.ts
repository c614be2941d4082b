import { hashOf, type Line, lineOf, uuidV7 } from '../../src/logbook';
import type { Draft, EntryId, Head } from '../../src/terms';
import { parseInstant, type QuantityId, readQuantity, type Typed } from '../../src/units';

/** What the scenario says; rig, version and place of the line in the chain are filled in by the teller. */
export type Told = Omit<Draft, 'rig' | 'version' | 'observed_at' | 'by'> & { readonly at: string; readonly by?: string; readonly observed_at?: string };

export type Teller = { readonly tell: (told: Told) => EntryId; readonly lines: () => readonly Line[] };

const bytesOf = (hex: string, count: number): Uint8Array => Uint8Array.from({ length: count }, (_, i) => Number.parseInt(hex.slice(i * 2, i * 2 + 2), 16));

/**
 * Writes one device's lines in the order told. The same story gives the same bytes on every machine: chance comes from the text of the story itself.
 *
 * @param known  last lines of other devices that this one holds from the start
 */
export const teller = (rig: string, device: string, by: string, versionOf: (kind: string) => number, known: readonly Head[] = []): Teller => {
  const lines: Line[] = [];
  return {
    lines: () => lines,
    tell: ({ at, by: who, observed_at, ...rest }) => {
      const ms = parseInstant(at);
      if (ms === undefined) throw new Error(`the story names no real time: ${at}`);
      const counter = lines.length + 1;
      const line = lineOf({
        ...rest,
        id: uuidV7(ms, bytesOf(hashOf(`${device} ${counter} ${at}`), 10)),
        rig,
        version: versionOf(rest.kind),
        observed_at: observed_at ?? at,
        recorded_at: at,
        by: who ?? by,
        device,
        counter,
        previous: lines.at(-1)?.hash ?? null,
        heads: known,
      });
      lines.push(line);
      return line.entry.id;
    },
  };
};

/** A number as the story's people typed it. */
export const typed = (text: string, quantity: QuantityId, unit: string): Typed => {
  const read = readQuantity(text, quantity, unit);
  if (!read.ok) throw new Error(read.refusals[0]?.sentence);
  return read.value;
};

/** A fixed fraction from 0 to 1 for a text: the story's only chance. */
export const lot = (text: string): number => Number.parseInt(hashOf(text).slice(0, 8), 16) / 0x1_0000_0000;
