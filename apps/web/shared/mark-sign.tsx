import { MARK_WORD, type Mark, type Who } from '../../../src/terms';

/** Twelve round dots on a ring of radius 9. */
const DOTS = Array.from({ length: 12 }, (_, i) => [12 + 9 * Math.sin((i * Math.PI) / 6), 12 - 9 * Math.cos((i * Math.PI) / 6)] as const);

const shape = (mark: Mark) => {
  switch (mark) {
    case 'do-not-use':
      return (
        <>
          <rect x="2.6" y="2.6" width="18.8" height="18.8" fill="none" stroke="currentColor" strokeWidth="3.2" />
          <path d="M4 20 20 4" fill="none" stroke="currentColor" strokeWidth="4.2" />
        </>
      );
    case 'before-moving':
      return <path d="M7.44 1h9.12L23 7.44v9.12L16.56 23H7.44L1 16.56V7.44z" fill="var(--mark-moving, currentColor)" stroke="currentColor" strokeWidth="1.4" />;
    case 'before-rain':
      return <path d="M12 .8C14.6 5.4 20 10 20 15.2a8 8 0 0 1-16 0C4 10 9.4 5.4 12 .8z" fill="var(--mark-rain, currentColor)" stroke="currentColor" strokeWidth="1.4" />;
    case 'this-season':
      return (
        <>
          <path d="M3 12h18v9H3z" fill="var(--mark-season, currentColor)" />
          <path d="M3 3h18v18H3zM3 12h18" fill="none" stroke="currentColor" strokeWidth="2.6" />
        </>
      );
    case 'watch':
      return <circle cx="12" cy="12" r="8.1" fill="none" stroke="currentColor" strokeWidth="3.3" />;
    case 'sound':
      return <path d="M4.5 13 10 18.5 20 6" fill="none" stroke="currentColor" strokeWidth="3.4" />;
    case 'not-seen':
      return DOTS.map(([x, y]) => <circle key={`${x} ${y}`} cx={x} cy={y} r="1.45" fill="currentColor" />);
  }
};

/**
 * The mark of an urgency. Beside its word it is silent; alone it is spoken.
 * The corner flag says that it is for a professional.
 */
export const MarkSign = ({ mark, who, spoken = false }: { readonly mark: Mark; readonly who?: Who; readonly spoken?: boolean }) => {
  const flag = who === 'professional';
  const name = `${MARK_WORD[mark]}${flag ? ', professional' : ''}`;
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: it is named by aria-label, or silent beside its word
    <svg className={`mark mark-${mark}`} viewBox={flag ? '0 -3 28.5 27' : '0 0 24 24'} {...(spoken ? { role: 'img', 'aria-label': name } : { 'aria-hidden': true })}>
      {shape(mark)}
      {flag && <path d="M17.3-2.5H28V8.2z" fill="currentColor" stroke="var(--paper)" strokeWidth="1" />}
    </svg>
  );
};
