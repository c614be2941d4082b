import { type Drawing, FONT_FAMILY, type Theme } from '../../../src/drawing';
import { useSettings } from '../shared/settings';
import { SheetShapes } from './sheet-shapes';

/** A drawing that is only looked at: one picture with one spoken name. */
export const Picture = ({ drawing, className = '', theme: given }: { readonly drawing: Drawing; readonly className?: string; readonly theme?: Theme }) => {
  const night = useSettings().theme === 'night';
  const theme = given ?? (night ? 'night' : 'desk');
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
