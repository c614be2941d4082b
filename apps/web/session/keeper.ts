import { troubleOf } from '../../../src/adapters/trouble';
import { asksAt, kindById, rigKindWord } from '../../../src/entries';
import { type Book, inKnownOrder, type LogbookStore, type PhotoStore } from '../../../src/logbook';
import { defectsOf, isOpen, looksChain, type Plan } from '../../../src/plan';
import { type Rig, type Stop, startingLayout, walkingOrder } from '../../../src/rig';
import { type Draft, type Entry, type RigId, type StationId, stationOf, WHOLE_RIG } from '../../../src/terms';
import { type CivilDay, civilDay, lastDay, type Preferences, parseWhen, showDay } from '../../../src/units';
import { doubtsNow } from './doubts-now';
import { disagreeing, importWords } from './import-words';
import { restingOn, supposing } from './judging';
import { lookBack } from './looking-back';
import { moistureMaps } from './maps';
import { planning } from './planning';
import type { Copies, Drafts, Files, Photos, Trouble } from './ports';
import { recordWords } from './record-words';
import { refuseDrafts } from './refusing';
import { rigBooks } from './rig-books';
import type { Imported, LogbookPage, Overview, RigLine, Session, StationView } from './session';

export type Given = {
  readonly store: LogbookStore;
  readonly photoStore: PhotoStore;
  readonly drafts: Drafts;
  readonly files: Files;
  readonly photos: Photos;
  /** RFC 3339 with this place's offset. */
  readonly now: () => string;
  readonly newId: () => string;
  readonly copies: Copies;
  /** Calls back when a rig's logbook has grown, by this tab or another. */
  readonly watch: (changed: (rig: RigId) => void) => void;
  /** What stands wrong with the storage now. */
  readonly trouble: () => Trouble | undefined;
  readonly storage: Session['storage'];
};

const METRIC: Preferences = { system: 'metric', units: {} };

/** The session: entries in, state and plan out. Everything outside it is handed in, so that checks can run it whole. */
export const keeper = (given: Given): Session => {
  const { store, drafts, now } = given;
  const books = rigBooks(store);
  const plans = planning();
  const maps = moistureMaps();
  const watchers = new Set<(rig: RigId) => void>();
  const today = (): CivilDay => lastDayOf(now());

  const changed = (rig: RigId): void => {
    for (const tell of watchers) tell(rig);
  };

  /** News of this tab's own writing comes back as well; those are known already. */
  const own = new Map<RigId, number>();
  given.watch((rig) => {
    const expected = own.get(rig) ?? 0;
    if (expected > 0) own.set(rig, expected - 1);
    else
      void books.renew(rig).then(
        () => changed(rig),
        () => undefined,
      );
  });

  const keep = async (all: readonly Draft[]): Promise<readonly Entry[]> => {
    const rigs = [...new Set(all.map((d) => d.rig))];
    // Read first: what is written is then only added, and the screen never waits for a whole reading after a tap.
    const read = await Promise.all(rigs.map(async (rig) => [rig, (await books.of(rig)).book] as const));
    refuseDrafts(all, new Map(read), now());
    for (const rig of rigs) own.set(rig, (own.get(rig) ?? 0) + 1);
    const lines = await store.append(all).catch((trouble: unknown) => {
      for (const rig of rigs) own.delete(rig);
      throw trouble;
    });
    for (const rig of rigs) {
      await books.take(
        rig,
        lines.filter((l) => l.entry.rig === rig),
      );
      changed(rig);
    }
    return lines.map((l) => l.entry);
  };

  /** A device without room still hands out its copy; only that it did so stays unwritten. */
  const wasCopied = async (rig: RigId): Promise<void> => {
    const { book } = await books.of(rig);
    await given.copies.mark(rig, book.state.heads, now()).catch((error: unknown) => {
      if (!troubleOf(error)) throw error;
    });
    changed(rig);
  };

  const overview = async (rig: RigId, on: number = today()): Promise<Overview> => {
    const { book, lines } = await books.of(rig);
    const day = civilDay(on);
    const { round, timeline } = plans.of(rig, book, today());
    const { plan, marks } = day < today() ? lookBack(rig, lines, day).planned : plans.of(rig, book, day);
    return {
      rig: book.state.subject,
      plan,
      marks,
      round,
      timeline,
      record: recordWords(await given.copies.of(rig), given.trouble()),
      forks: book.state.forks,
      clockDoubts: doubtsNow(book.state, lines, now()),
      disputes: book.disputes,
      entries: lines.length,
    };
  };

  const rigLine = async (rig: RigId): Promise<RigLine> => {
    const { book } = await books.of(rig);
    const { plan, round } = plans.of(rig, book, today());
    const { subject } = book.state;
    return {
      id: rig,
      name: subject.name,
      words: [rigKindWord(subject.kind), ...(subject.year === 'unknown' ? [] : [subject.year])].join(', '),
      open: plan.findings.filter(isOpen).length,
      last_seen: round && showDay(lastDayOf(round.begun), true),
      demo: (await drafts.get(demoName(rig))) === true,
    };
  };

  const importFile = async (name: string, bytes: Uint8Array): Promise<Imported> => {
    const read = await given.files.read(name, bytes);
    for (const photo of read.photos) await given.photoStore.put(photo.bytes, photo.media_type);
    const result = await store.take(read.lines);
    const rigs = [...new Set(result.taken.map((l) => l.entry.rig))];
    let differ = 0;
    for (const rig of rigs) {
      const { lines } = await books.renew(rig);
      differ += disagreeing(
        lines,
        result.taken.filter((l) => l.entry.rig === rig),
      );
      changed(rig);
    }
    const refused = [...read.refused, ...result.refused.map((r) => ({ line: r.line, refusals: r.refusals }))];
    const { known } = result;
    const taken = result.taken.length;
    return { taken, known, rigs, refused, words: importWords({ taken, known, refused: refused.length, disagreeing: differ, doubt: read.doubt }) };
  };

  return {
    rigs: async () => Promise.all((await store.rigs()).map(rigLine)),

    newRig: async (answers, by) => {
      const made = startingLayout(answers);
      if (!made.ok) throw new Error(made.refusals.map((r) => r.sentence).join(' '));
      const rig = given.newId();
      const common = { rig, by, observed_at: now(), place: WHOLE_RIG } as const;
      const { name, kind, year, skin, construction, roof } = answers;
      const described = { name, kind, skin, construction, roof, ...(year === undefined ? {} : { year: { typed: String(year), unit: 'count', si: year } }) };
      await keep([
        { ...common, kind: 'rig-described', version: versionOf('rig-described'), body: described },
        { ...common, kind: 'layout-placed', version: versionOf('layout-placed'), body: { layout: made.value.layout } },
      ]);
      return rig;
    },

    overview,

    station: async (rig, station): Promise<StationView> => {
      const { book } = await books.of(rig);
      const { plan } = plans.of(rig, book, today());
      const looksKind = book.state.subject.stations.find((s) => s.id === station)?.looks ?? '';
      const through = (['outside', 'inside'] as const).flatMap((side) =>
        [...(book.state.through.get(`station/${station}/${side}`) ?? [])].map(([kind, entries]) => ({ kind, side, entries })),
      );
      return {
        through,
        findings: plan.findings.filter((f) => f.station === station || stationOf(f.place) === station),
        looks: looksOf(looksKind),
        defects: defectsOf(looksKind).map((d) => (d.recognise === undefined ? { id: d.id, word: d.name } : { id: d.id, word: d.name, line: d.recognise })),
      };
    },

    logbook: async (rig, from, count): Promise<LogbookPage> => {
      const { book, lines } = await books.of(rig);
      const order = inKnownOrder(lines).toReversed();
      return {
        total: order.length,
        lines: order.slice(from, from + count).map(({ entry }) => {
          const standing = book.state.standing.get(entry.id);
          const kind = kindById(entry.kind);
          return {
            entry,
            body: standing?.body ?? entry.body,
            words: kind ? safely(() => kind.line((standing?.body ?? entry.body) as never, METRIC)) : `${entry.kind}: a kind this version does not know, kept as it came`,
            withdrawn: book.state.withdrawn.has(entry.id),
            corrected_by: standing?.corrected_by,
          };
        }),
      };
    },

    stops: async (rig, form, faces) => {
      const { book } = await books.of(rig);
      const { subject } = book.state;
      const order = walkingOrder(subject, { form, inside: readInside(book, plans.of(rig, book, today()).plan), ...(faces === undefined ? {} : { faces }) });
      const asked = (stop: Stop): readonly Stop[] => {
        const station = subject.stations.find((s) => s.id === stop.station);
        // Before a trip a roof vent is looked at from within; what is asked about it belongs to its outside.
        const side = station && ([stop.side, 'outside'] as const).find((s) => asksAt(station, s, form).asks.length > 0);
        return side === undefined ? [] : [{ ...stop, side }];
      };
      return order.flatMap(asked);
    },

    keep,

    judge: async (rig, all, on = today()) => {
      const { book } = await books.of(rig);
      const supposed = supposing(rig, book, all, now());
      return { findings: restingOn(plans.findings(rig, book, supposed.book, civilDay(on)), supposed.ids) };
    },

    moistureField: async (rig, panel, wish = {}) => {
      const { book, lines } = await books.of(rig);
      const day = civilDay(wish.on ?? today());
      const { plan } = day < today() ? lookBack(rig, lines, day).planned : plans.of(rig, book, day);
      return maps.of(book.state.subject, plan, panel, wish);
    },

    saveDraft: (name, value) => drafts.put(name, value),
    draft: (name) => drafts.get(name),

    undo: async (rig, entry, by) => {
      const { lines } = await books.of(rig);
      const place = lines.find((l) => l.entry.id === entry)?.entry.place ?? WHOLE_RIG;
      await keep([{ rig, by, observed_at: now(), place, kind: 'withdrawal', version: versionOf('withdrawal'), body: {}, concerns: [entry] }]);
    },

    keepPhoto: (bytes, _media_type, reduce) => given.photos.keep(bytes, reduce),
    photo: async (hash) => {
      const found = await given.photoStore.get(hash);
      return found && new Blob([found.bytes as BlobPart], { type: found.media_type });
    },

    exportLogbook: async (rig) => {
      const { book, lines } = await books.of(rig);
      const text = await given.files.logbook(lines);
      await wasCopied(rig);
      return { name: fileName(book.state.subject.name, today(), 'jsonl'), text };
    },
    exportArchive: async (rig) => {
      const { book, lines } = await books.of(rig);
      const bytes = await given.files.archive(lines, given.photoStore);
      await wasCopied(rig);
      return { name: fileName(book.state.subject.name, today(), 'zip'), bytes };
    },
    exportPlan: async (rig, on) => {
      const { book } = await books.of(rig);
      return { name: fileName(`${book.state.subject.name} plan`, civilDay(on), 'json'), text: await given.files.plan(plans.of(rig, book, civilDay(on)).plan, book.state.subject) };
    },

    paper: async (rig, wish) => {
      const { book, lines } = await books.of(rig);
      return given.files.paper(book.state, lines, plans.of(rig, book, today()), wish, given.photoStore);
    },

    importFile,

    loadDemo: async () => {
      const text = await given.files.demo();
      const { rigs } = await importFile('sample.jsonl', new TextEncoder().encode(text));
      const known = rigs[0] ?? (await demoRig(given));
      if (known === undefined) throw new Error('the sample holds no rig');
      await drafts.put(demoName(known), true);
      await wasCopied(known);
      return known;
    },

    forget: async (rig) => {
      own.set(rig, (own.get(rig) ?? 0) + 1);
      await store.forget(rig);
      books.drop(rig);
      plans.drop(rig);
      maps.drop(rig);
      changed(rig);
    },

    watch: async (tell) => {
      watchers.add(tell);
    },
    storage: given.storage,
  };
};

/** Inside, a round looks where water may be coming in now, and where somebody has looked before. */
const readInside = (book: Book<Rig>, plan: Plan): readonly StationId[] => {
  const wet: readonly string[] = ['do-not-use', 'before-moving', 'before-rain'];
  const letsIn = plan.findings.filter((f) => isOpen(f) && wet.includes(f.urgency)).flatMap((f) => f.station ?? []);
  return book.state.subject.stations.filter((s) => s.cut_through && (letsIn.includes(s.id) || book.state.through.has(`station/${s.id}/inside`))).map((s) => s.id);
};

const demoName = (rig: RigId): string => `${rig}/sample`;

const demoRig = async ({ store, files }: Given): Promise<RigId | undefined> => {
  const first = JSON.parse((await files.demo()).split('\n', 1)[0] ?? '{}') as Partial<Entry>;
  return (await store.rigs()).find((r) => r === first.rig);
};

const lastDayOf = (text: string): CivilDay => {
  const when = parseWhen(text);
  return when ? lastDay(when) : civilDay(0);
};

const versionOf = (kind: string): number => kindById(kind)?.version ?? 1;

const safely = (words: () => string): string => {
  try {
    return words();
  } catch {
    return 'An entry whose body cannot be read by this version; it is kept as it came.';
  }
};

const looksOf = (kind: string): StationView['looks'] => {
  const chain = looksChain(kind);
  const first = (part: 'look' | 'feel' | 'measure' | 'sound'): string | undefined => chain.find((l) => l[part] !== undefined)?.[part];
  return (
    [
      ['Look', first('look')],
      ['Feel', first('feel')],
      ['Measure', first('measure')],
      ['Sound', first('sound')],
    ] as const
  ).flatMap(([verb, line]) => (line === undefined ? [] : [{ verb, line }]));
};

const fileName = (name: string, day: CivilDay, ending: string): string =>
  `${
    name
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '') || 'rig'
  } ${showDay(day)}.${ending}`.replaceAll(' ', '-');
