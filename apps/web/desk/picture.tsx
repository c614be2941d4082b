import { type Drawing, FONT_FAMILY } from '../../../src/drawing';
import { useSettings } from '../shared/settings';
import { SheetShapes } from './sheet-shapes';

/** A drawing that is only looked at: one picture with one spoken name. */
export const Picture = ({ drawing, className = '' }: { readonly drawing: Drawing; readonly className?: string }) => {
  const theme = useSettings().theme === 'night' ? 'night' : 'desk';
  return (
    <svg
      className={`picture ${className}`}
      data-theme={theme}
      viewBox={`0 0 ${drawing.width} ${drawing.height}`}
      width={drawing.width * drawing.px}
      role="img"
      aria-label={drawing.title}
      fontFamily={FONT_FAMILY}
    >
      <SheetShapes primitives={drawing.primitives} theme={theme} current={undefined} selected={undefined} still />
    </svg>
  );
};
