import { type ReactNode, useEffect, useRef, useState } from 'react';
import type { RecordStatus } from '../session/session';
import { RecordCell } from '../shared/record-cell';
import { BackSign } from '../shared/signs';

type Props = {
  /** The cells of the title block, the first in bold. */
  readonly cells: readonly ReactNode[];
  readonly record?: RecordStatus | undefined;
  readonly back?: { readonly to: string; readonly name: string } | undefined;
  readonly under?: ReactNode;
  readonly children: ReactNode;
  readonly dock?: ReactNode;
  readonly ruled?: boolean;
};

/** What scrolls can be reached with the keyboard; what does not is passed over. */
const useScrolls = () => {
  const ref = useRef<HTMLElement>(null);
  const [scrolls, set] = useState(false);
  useEffect(() => {
    const main = ref.current;
    if (!main) return;
    const look = (): void => set(main.scrollHeight > main.clientHeight + 1);
    const watch = new ResizeObserver(look);
    watch.observe(main);
    for (const child of main.children) watch.observe(child);
    look();
    return () => watch.disconnect();
  });
  return { ref, scrolls };
};

/** Every screen for the hand: title block above, what is read in the middle, what is pressed at the foot. */
export const Frame = ({ cells, record, back, under, children, dock, ruled = false }: Props) => {
  const { ref, scrolls } = useScrolls();
  return (
    <div className="field">
      <header className="title-block">
        {back && (
          <a className="back" href={back.to} aria-label={back.name}>
            <BackSign />
          </a>
        )}
        {cells
          .filter((cell) => cell !== '')
          .map((cell, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the cells of one screen keep their places
            <span key={i}>{cell}</span>
          ))}
        <RecordCell record={record} />
      </header>
      {under}
      {/* A part of the page that scrolls must be reachable with the keyboard. */}
      <main id="content" ref={ref} {...(scrolls ? { tabIndex: 0 } : {})}>
        {children}
      </main>
      {dock && <footer className={`dock${ruled ? ' ruled' : ''}`}>{dock}</footer>}
    </div>
  );
};

type ActProps = { readonly words: ReactNode; readonly second?: ReactNode; readonly act?: (() => void) | undefined; readonly to?: string; readonly disabled?: boolean };

/**
 * The one thing to do next: full width, always at the same place; its second line says what will be recorded.
 * The second press of a double press counts for nothing: it would answer a place that nobody has looked at.
 */
export const Primary = ({ words, second, act, to, disabled = false }: ActProps) =>
  to !== undefined ? (
    <a className="act" href={to}>
      <span>{words}</span>
      {second && <small>{second}</small>}
    </a>
  ) : (
    <button type="button" className="act" onClick={(event) => event.detail < 2 && act?.()} disabled={disabled}>
      <span>{words}</span>
      {second && <small>{second}</small>}
    </button>
  );

/** One of the two cells below the primary. */
export const Cell = ({
  children,
  act,
  to,
  undo = false,
  wide = false,
  disabled = false,
  spoken,
}: {
  readonly children: ReactNode /** Read aloud in place of the words, where these are short for room. */;
  readonly spoken?: string;
  readonly act?: () => void;
  readonly to?: string;
  readonly undo?: boolean;
  readonly wide?: boolean;
  readonly disabled?: boolean;
}) => {
  const look = `press${undo ? ' undo' : ''}${wide ? ' wide' : ''}`;
  return to !== undefined ? (
    <a className={look} href={to}>
      {children}
    </a>
  ) : (
    <button type="button" className={look} onClick={act} disabled={disabled} aria-label={spoken}>
      {children}
    </button>
  );
};
