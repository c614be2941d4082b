/** Load index, speed symbol and load range, as they stand behind a size: `117/112N`, `121/118 R E`, `LR D`. */
export type ServiceDescription = {
  readonly load_index_single?: number;
  readonly load_index_dual?: number;
  readonly speed_symbol?: string;
  readonly load_range?: string;
  readonly ply_rating?: number;
};

const INDEX = /^\(?(\d{2,3})(?:\/(\d{2,3}))?([A-HJ-NP-Y])?\)?$/;
const RANGE = /^(?:LR)?([B-N])$/;
const PLY = /^(\d{1,2})PR$/;
/** Marks that say nothing here: tubeless, tube type, mud and snow, standard and extra load. */
const PASSED_OVER = new Set(['TL', 'TT', 'M+S', 'MS', 'SL', 'XL', 'LR', 'LOAD', 'RANGE', 'TUBELESS', '']);

type Read = { readonly description: ServiceDescription; readonly unread: string | undefined };

const take = (read: Read, token: string): Read => {
  if (read.unread !== undefined || PASSED_OVER.has(token)) return read;
  const d = read.description;
  const index = INDEX.exec(token);
  if (index && d.load_index_single === undefined) {
    const [, single, dual, symbol] = index;
    return {
      ...read,
      description: {
        ...d,
        load_index_single: Number(single),
        ...(dual === undefined ? {} : { load_index_dual: Number(dual) }),
        ...(symbol === undefined ? {} : { speed_symbol: symbol }),
      },
    };
  }
  const ply = PLY.exec(token);
  if (ply) return { ...read, description: { ...d, ply_rating: Number(ply[1]) } };
  const range = RANGE.exec(token);
  if (range && d.load_range === undefined) return { ...read, description: { ...d, load_range: range[1] ?? '' } };
  return { ...read, unread: token };
};

/** Reads what stands behind the size. `unread` names the first mark that was not understood. */
export const readServiceDescription = (text: string): Read =>
  text
    .toUpperCase()
    .replace(/^\s*\//, ' ')
    .replace(/LOAD RANGE /g, 'LR')
    .replace(/\bLR /g, 'LR')
    .replace(/(\d) +([A-HJ-NP-Y])(?= |$)/g, '$1$2')
    .trim()
    .split(/\s+/)
    .reduce<Read>(take, { description: {}, unread: undefined });
