import type { Source } from '../../terms';
import { bond, bondSource, type Confidence, TOUCH_VERDICTS, TOUCHED, TOUCHING, type TouchedId, type TouchingId, type TouchVerdict } from './bonds';

/** What a person says of the seam, and of the product in hand. */
export type Touch = {
  readonly material: TouchingId;
  /** Both sides of the seam; twice the same where both are of one. */
  readonly sides: readonly [TouchedId, TouchedId];
  /** Sides that the product's own sheet names. */
  readonly named: readonly [boolean, boolean];
  /** What stays there under the new bead: `nothing` once it is bare. */
  readonly there_now: TouchingId | 'nothing' | 'unknown';
  /** Was silicone ever used here? */
  readonly silicone: 'no' | 'yes' | 'unknown';
  /** Of this very product on this very seam, prepared the same way. */
  readonly patch: 'none' | 'held' | 'failed';
  /** What the manual of the rig or a dealer says, with where it stands. */
  readonly own?: { readonly verdict: TouchVerdict; readonly source: string };
};

export type TouchReason = {
  readonly about: 'one-side' | 'other-side' | 'there-now' | 'silicone' | 'patch';
  readonly on: string;
  readonly verdict: TouchVerdict;
  readonly confidence: Confidence;
  /** How to prepare, or why not. */
  readonly words: string;
  readonly sources: readonly Source[];
  /** Sources of the same pair that do not agree, as each has it. */
  readonly disagree: readonly { readonly says: string; readonly source: Source }[];
};

export type MayTouch = {
  readonly verdict: TouchVerdict;
  /** Of what decides; undefined where a person's own rule does. */
  readonly confidence: Confidence | undefined;
  /** What it would be without the person's own rule. */
  readonly by_table: TouchVerdict;
  readonly reasons: readonly TouchReason[];
};

const LAP: readonly TouchingId[] = ['lap-self-levelling', 'lap-non-sag'];
const MEMBRANES: readonly string[] = ['epdm', 'tpo', 'pvc', 'coated'];
const SILICONES: readonly string[] = ['silicone', 'silicone-acetoxy'];
const BUTYLS: readonly string[] = ['butyl-tape', 'butyl-gun', 'repair-tape'];
/** Wiped on and off again: what lies underneath does not matter to them. */
const CLEANERS: readonly TouchingId[] = ['isopropyl-alcohol', 'petroleum-cleaner'];

const OURS = bondSource('OURS');
const PRACTICE = bondSource('CP');

const rank = (verdict: TouchVerdict): number => TOUCH_VERDICTS.indexOf(verdict);
const worse = (a: TouchVerdict, b: TouchVerdict): TouchVerdict => (rank(a) >= rank(b) ? a : b);
const wordOf = (id: string): string => [...TOUCHED, ...TOUCHING].find((w) => w.id === id)?.word ?? id;

const fromTable = (about: TouchReason['about'], material: TouchingId, surface: string, on: string): TouchReason => {
  const row = bond(material, surface);
  if (row === undefined) return { about, on, verdict: 'test', confidence: 'low', words: 'no source speaks of this pair', sources: [OURS], disagree: [] };
  return {
    about,
    on,
    verdict: row.verdict,
    confidence: row.confidence,
    words: row.note ?? '',
    sources: row.sources.map(([key, covers]) => bondSource(key, covers)),
    disagree: (row.disagree ?? []).map(({ says, source }) => ({ says, source: bondSource(source) })),
  };
};

/** A side of the seam. What the product's own sheet names needs no test patch; and a lap sealant is not refused a membrane for its carrier. */
const side = (about: 'one-side' | 'other-side', { material }: Touch, surface: TouchedId, named: boolean): TouchReason => {
  const found = fromTable(about, material, surface, wordOf(surface));
  if (!named || found.verdict !== 'test') return found;
  const lap = LAP.includes(material) && MEMBRANES.includes(surface);
  return {
    ...found,
    verdict: lap ? 'yes' : 'prep',
    confidence: 'medium',
    words: 'its own sheet names this surface: prepare it as the sheet says',
    sources: [OURS, ...found.sources],
  };
};

const OVER = { about: 'there-now', disagree: [] } as const;

/** What stays under the new bead. */
const underneath = ({ material, there_now }: Touch): TouchReason | undefined => {
  if (there_now === 'nothing' || there_now === 'unknown' || SILICONES.includes(there_now) || CLEANERS.includes(there_now as TouchingId)) return undefined;
  const on = `old ${wordOf(there_now)}`;
  if (there_now === 'bitumen') return fromTable('there-now', material, 'asphalt', on);
  if (there_now === material)
    return { ...OVER, on, verdict: 'prep', confidence: 'medium', words: 'the same family: take off all that is loose, clean, seal over what still sticks', sources: [PRACTICE] };
  if (material === 'polyurethane' && BUTYLS.includes(there_now))
    return { ...OVER, on, verdict: 'no', confidence: 'high', words: 'take butyl off without a trace first', sources: [bondSource('GLASSID')] };
  return { ...OVER, on, verdict: 'test', confidence: 'low', words: 'no source tells how these two go together; bare ground is safer', sources: [OURS] };
};

/** Silicone, known or not ruled out: what nobody knows counts as silicone. */
const residue = ({ material, there_now, silicone }: Touch): TouchReason | undefined => {
  const known = silicone === 'yes' || SILICONES.includes(there_now);
  if (!known && silicone === 'no' && there_now !== 'unknown') return undefined;
  const found = fromTable('silicone', material, 'old-silicone', known ? 'old silicone' : 'silicone that nobody ruled out');
  const why = known ? 'take off every trace' : 'not known, which counts as silicone';
  return { ...found, words: `${why}${found.words === '' ? '' : `: ${found.words}`}` };
};

/** A patch that held answers what had to be tried and whether residue is in the way; it says nothing of harm that shows later. */
const afterPatch = (reason: TouchReason, patch: Touch['patch']): TouchReason =>
  patch !== 'held' || (reason.verdict !== 'test' && reason.about !== 'silicone') || rank(reason.verdict) < rank('test')
    ? reason
    : { ...reason, verdict: 'prep', words: 'a test patch held: prepare the whole seam as the patch was', sources: [PRACTICE, ...reason.sources] };

const CONFIDENCE: readonly Confidence[] = ['low', 'medium', 'high'];
const byConfidence = (reasons: readonly TouchReason[]): readonly Confidence[] => reasons.map((r) => r.confidence).sort((a, b) => CONFIDENCE.indexOf(a) - CONFIDENCE.indexOf(b));

/** One sure reason carries a no, and a call to try it; leave to go on is as sure as the least sure of all. */
const confidenceIn = (verdict: TouchVerdict, reasons: readonly TouchReason[]): Confidence =>
  (verdict === 'yes' || verdict === 'prep' ? byConfidence(reasons)[0] : byConfidence(reasons.filter((r) => r.verdict === verdict)).at(-1)) ?? 'low';

/**
 * Whether a product may be laid, or a cleaner wiped, on a seam as it is: both sides, what is there already, and silicone that nobody ruled out.
 *
 * @param touch  product, both sides, what stays underneath, what is known of silicone, a test patch, the product's own sheet, the person's own rule
 * @returns      the worst of all reasons, each with its sources; a person's own rule in its place, with what the table would say beside it
 * @agrees       eight published verdicts exactly
 * @assumes      families, not products: a product's own sheet comes first, and is told as `named` or as the person's own rule
 * @source       1. bonds.json, each row with its own sources and confidence; where sources disagree, each is given
 *               2. nothing bonds to a silicone film; unknown counts as silicone until a test patch holds: sealant shop articles, read; the counting is ours
 *               3. silicone and butyl come off before polyurethane: guidance on vehicle glazing, read
 *               4. a lap sealant whose sheet names the membrane is not refused for its carrier: ours; the ban on petroleum is one on cleaners and standing oil
 */
export const mayTouch = (touch: Touch): MayTouch => {
  const { sides, named, material, patch, own } = touch;
  const [one, other] = sides;
  const wiped = CLEANERS.includes(material);
  const asked = [
    side('one-side', touch, one, named[0]),
    ...(other === one ? [] : [side('other-side', touch, other, named[1])]),
    ...(wiped ? [] : [underneath(touch), residue(touch)]),
  ].filter((r): r is TouchReason => r !== undefined);
  const reasons: readonly TouchReason[] = [
    ...asked.map((r) => afterPatch(r, patch)),
    ...(patch === 'failed' && !wiped
      ? [{ about: 'patch', on: 'the test patch', verdict: 'no', confidence: 'high', words: 'a test patch came off', sources: [PRACTICE], disagree: [] } as const]
      : []),
  ];
  const by_table = reasons.map((r) => r.verdict).reduce<TouchVerdict>(worse, 'yes');
  return own === undefined
    ? { verdict: by_table, confidence: confidenceIn(by_table, reasons), by_table, reasons }
    : { verdict: own.verdict, confidence: undefined, by_table, reasons };
};
