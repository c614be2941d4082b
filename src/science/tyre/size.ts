import { accept, type Metres, metres, type Result, refuse, type Share, share, toSi } from '../../units';
import { readServiceDescription, type ServiceDescription } from './service-description';

export type TyreSize = {
  /** For which service the size was made. Loads differ at equal dimensions, so it must never be dropped. */
  readonly service: 'passenger' | 'metric' | 'light-truck' | 'special-trailer' | 'temporary' | 'commercial' | 'truck' | 'unmarked';
  /** As moulded before or behind the size: P, LT, ST, T, C; empty where there is none. */
  readonly mark: string;
  readonly section_width: Metres;
  readonly aspect?: Share;
  readonly construction: 'radial' | 'bias' | 'belted';
  readonly rim: Metres;
  /** Undefined where the size does not tell it: only a maker's table does. */
  readonly section_height?: Metres;
  readonly overall_diameter?: Metres;
  readonly description: ServiceDescription;
};

const CONSTRUCTION: Readonly<Record<string, TyreSize['construction']>> = { R: 'radial', ZR: 'radial', D: 'bias', '-': 'bias', B: 'belted' };
const SERVICE: Readonly<Record<string, TyreSize['service']>> = { P: 'passenger', LT: 'light-truck', ST: 'special-trailer', T: 'temporary', C: 'commercial' };

const inches = (text: string | undefined): number => toSi(Number(text), 'length', 'in');

/** Rims of .5 in (15° drop centre) are truck rims; without a mark the size is a truck size. */
const serviceOf = (mark: string, rim: string, unmarked: TyreSize['service']): TyreSize['service'] => SERVICE[mark] ?? (rim.endsWith('.5') ? 'truck' : unmarked);

/** What a pattern finds: marks and figures by name. */
type Found = Readonly<Record<string, string | undefined>>;
type Form = {
  readonly pattern: RegExp /** Service of a size without a mark. */;
  readonly unmarked: TyreSize['service'];
  readonly dimensions: (f: Found) => Pick<TyreSize, 'section_width' | 'aspect' | 'section_height' | 'overall_diameter'>;
};

/** The forms in which sizes are moulded, the most telling first. Letters are capitals, the decimal sign is a point. */
const FORMS: readonly Form[] = [
  {
    // ST225/75R15, LT235/85R16, 215/65R15, 205/65R15C, T145/80D18, 275/80R22.5
    unmarked: 'metric',
    pattern: /^(?<before>P|LT|ST|T)? ?(?<width>\d{3})\/(?<aspect>\d{2,3}) ?(?<build>ZR|R|D|B|-) ?(?<rim>\d{2}(?:\.5)?)(?<after>LT|ST|C)?(?<rest>(?: |\/|(?<=\d)[B-N](?= |$)).*)?$/,
    dimensions: (f) => {
      const width = Number(f.width) / 1000;
      const aspect = Number(f.aspect) / 100;
      return {
        section_width: metres(width),
        aspect: share(aspect),
        section_height: metres(width * aspect),
        overall_diameter: metres(inches(f.rim) + 2 * width * aspect),
      };
    },
  },
  {
    // 31x10.50R15LT, 20.5x8.0-10
    unmarked: 'unmarked',
    pattern:
      /^(?<before>LT|ST)? ?(?<diameter>\d{2}(?:\.\d{1,2})?) ?X ?(?<width>\d{1,2}(?:\.\d{1,2})?) ?(?<build>R|D|B|-) ?(?<rim>\d{1,2}(?:\.5)?) ?(?<after>LT|ST)?(?<rest>(?: |\/).*)?$/,
    dimensions: (f) => ({
      section_width: metres(inches(f.width)),
      section_height: metres((inches(f.diameter) - inches(f.rim)) / 2),
      overall_diameter: metres(inches(f.diameter)),
    }),
  },
  {
    // 8R19.5, 10R22.5, 7.50-16, 4.80-12, 8-14.5
    unmarked: 'unmarked',
    pattern: /^(?<before>LT|ST)? ?(?<width>\d{1,2}(?:\.\d{1,2})?) ?(?<build>R|D|B|-) ?(?<rim>\d{1,2}(?:\.5)?) ?(?<after>LT|ST|C)?(?<rest>(?: |\/).*)?$/,
    dimensions: (f) => ({ section_width: metres(inches(f.width)) }),
  },
];

/** Sizes that no road tyre has: a slipped digit. [mm, %, in] */
const possible = (size: TyreSize): boolean =>
  size.section_width >= 0.09 &&
  size.section_width <= 0.46 &&
  (size.aspect ?? 0.6) >= 0.25 &&
  (size.aspect ?? 0.6) <= 1 &&
  size.rim >= inches('8') &&
  size.rim <= inches('24.5') &&
  (size.section_height ?? 0.1) > 0;

const refusal = (code: string, text: string, sentence: string): Result<never> =>
  refuse({ code, path: 'size', expected: 'a size as moulded, such as ST225/75R15, LT235/85R16, 31x10.50R15LT or 8R19.5', received: `“${text}”`, sentence });

/**
 * What a tyre's size says, in every form in which it is moulded.
 *
 * @param text  as moulded, with or without load index, speed symbol and load range
 * @returns     the parts of the size; diameter and height only where the size tells them. [m]
 * @valid       metric, light-truck, trailer, temporary, flotation, truck and inch sizes; anything else is refused
 * @agrees      exactly with the printed cases; the nominal diameter is within 0.5 % of one design diameter
 * @assumes     nominal dimensions; a tyre on its rim and under load differs by about 1 %
 * @source      1. Size designations as explained in vehicle owners' manuals, as read; section height = width × aspect
 */
export const readTyreSize = (text: string): Result<TyreSize> => {
  const given = text.trim();
  const clean = given
    .toUpperCase()
    .replace(/×/g, 'X')
    .replace(/,/g, '.')
    .replace(/\s+/g, ' ')
    .replace(/ ?\/ ?(?=\d)/g, '/');
  for (const form of FORMS) {
    const found = form.pattern.exec(clean)?.groups as Found | undefined;
    if (found?.rim === undefined) continue;
    // A C behind a size that already names its service is a load range.
    const ranged = found.before !== undefined && found.after === 'C';
    const mark = found.before ?? found.after ?? '';
    const read = readServiceDescription(`${ranged ? 'C ' : ''}${found.rest ?? ''}`);
    if (read.unread !== undefined) return refusal('unread-mark', given, `The size was read, but not the mark “${read.unread}” behind it. Leave it out or type it again.`);
    const size: TyreSize = {
      service: serviceOf(mark, found.rim, form.unmarked),
      mark,
      construction: CONSTRUCTION[found.build ?? 'R'] ?? 'radial',
      rim: metres(inches(found.rim)),
      ...form.dimensions(found),
      description: read.description,
    };
    return possible(size)
      ? accept(size)
      : refusal('no-such-size', given, 'No road tyre has these dimensions. Read the size again: width, slash, height in per cent, letter, rim in inches.');
  }
  return refusal('not-a-tyre-size', given, 'This is not a tyre size that can be read. Type it as it is moulded, such as ST225/75R15 or 8R19.5.');
};
