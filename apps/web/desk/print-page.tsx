import { useEffect, useRef, useState } from 'react';
import { isoDay } from '../../../src/units';
import type { PaperWish } from '../session/session';
import { go } from '../shared/route';
import { saidOf } from '../shared/trouble';
import { useDesk } from './desk';
import { giveFile } from './files';
import { fillFrame, printFrame } from './paper-frame';
import { desk } from './paths';

const SHEETS: readonly { readonly what: PaperWish['what']; readonly word: string; readonly line: string }[] = [
  { what: 'walk-sheet', word: 'Walk sheet', line: 'Every station in walking order, with lines to write on: for full sun, or a second pair of hands.' },
  {
    what: 'condition-record',
    word: 'Condition record',
    line: 'The drawing with its numbers, every finding with what was seen, the reasons and their sources: for an owner, a buyer or a workshop.',
  },
  { what: 'plan', word: 'Plan', line: 'The jobs in order, with their steps, and what to buy.' },
];

const LETTER_REGIONS = /-(US|CA|MX|PH|CL|CO|VE|GT|PR)\b/;

/** A sheet of paper, looked at before it is printed: A4 or Letter, black and white first. */
export const PrintPage = ({ what }: { readonly what: string | undefined }) => {
  const { id, overview, session, preferences, by, say } = useDesk();
  const chosen = SHEETS.find((s) => s.what === what) ?? SHEETS[0];
  const [paper, setPaper] = useState<PaperWish['paper']>(() => (LETTER_REGIONS.test(navigator.language) ? 'Letter' : 'A4'));
  const [form, setForm] = useState<'full' | 'pre-trip'>('full');
  const [html, setHtml] = useState<string>();
  const frame = useRef<HTMLIFrameElement>(null);

  // biome-ignore lint/correctness/useExhaustiveDependencies: a new overview means that the logbook has changed
  useEffect(() => {
    if (!chosen) return;
    let gone = false;
    setHtml(undefined);
    session.paper(id, { what: chosen.what, paper, preferences: { system: preferences.system, units: preferences.units }, by, form }).then(
      (made) => {
        if (!gone) setHtml(made);
      },
      (cause: unknown) => {
        if (!gone)
          say({
            form: 'problem',
            happened: `The sheet could not be made (${saidOf(cause)}).`,
            safe: 'The logbook is unchanged.',
            todo: 'Choose another sheet, or reload the page.',
          });
      },
    );
    return () => {
      gone = true;
    };
  }, [session, id, chosen, paper, form, preferences, by, overview]);

  useEffect(() => {
    if (html !== undefined && frame.current) fillFrame(frame.current, html);
  }, [html]);

  if (!chosen) return null;
  return (
    <main className="desk-page print-page" id="content">
      <header className="page-head">
        <h1>{chosen.word}, ready for paper</h1>
        <p className="lead">{chosen.line}</p>
      </header>
      <div className="columns print-columns">
        <section className="print-choice">
          <fieldset className="field-row">
            <legend>Sheet</legend>
            <div className="options">
              {SHEETS.map((s) => (
                <label key={s.what} className="option">
                  <input type="radio" name="sheet" checked={s.what === chosen.what} onChange={() => go(desk.print(id, s.what))} />
                  <span>
                    <b>{s.word}</b>
                  </span>
                </label>
              ))}
            </div>
          </fieldset>
          {chosen.what === 'walk-sheet' && (
            <fieldset className="field-row">
              <legend>Round</legend>
              <div className="options">
                <label className="option">
                  <input type="radio" name="round" checked={form === 'full'} onChange={() => setForm('full')} />
                  <span>
                    <b>Full round</b>
                  </span>
                </label>
                <label className="option">
                  <input type="radio" name="round" checked={form === 'pre-trip'} onChange={() => setForm('pre-trip')} />
                  <span>
                    <b>Before a trip</b>
                  </span>
                </label>
              </div>
            </fieldset>
          )}
          <fieldset className="field-row">
            <legend>Paper</legend>
            <div className="options">
              {(['A4', 'Letter'] as const).map((p) => (
                <label key={p} className="option">
                  <input type="radio" name="paper" checked={p === paper} onChange={() => setPaper(p)} />
                  <span>
                    <b>{p}</b>
                    <span className="mut">{p === 'A4' ? '210 × 297 mm' : '8.5 × 11 in'}</span>
                  </span>
                </label>
              ))}
            </div>
          </fieldset>
          <p className="buttons">
            <button type="button" className="button primary" disabled={html === undefined} onClick={() => frame.current && printFrame(frame.current)}>
              Print
            </button>
            <button
              type="button"
              className="button"
              disabled={html === undefined}
              onClick={() => {
                if (html === undefined) return;
                const name = `${fileWord(overview.rig.name)}-${chosen.what}-${isoDay(overview.plan.on)}.html`;
                giveFile(name, html, 'text/html');
                say({ form: 'kept', words: `The sheet was saved as ${name}. Any browser opens and prints it.` });
              }}
            >
              Save as a page
            </button>
          </p>
          <p className="mut small">Set the printer to actual size: the drawing has a true scale.</p>
        </section>
        <div className="print-look">
          <iframe ref={frame} className={`print-frame print-${paper.toLowerCase()}`} title={`${chosen.word} on ${paper}`} />
        </div>
      </div>
    </main>
  );
};

const fileWord = (name: string): string =>
  name
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '') || 'rig';
