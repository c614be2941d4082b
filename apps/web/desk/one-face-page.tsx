import { useMemo, useState } from 'react';
import { count, useDesk } from './desk';
import { type Layer, sheetDrawing } from './drawings';
import { insideDrawing } from './face-drawing';
import { StationList } from './sheet-lists';
import { OtherSheets, openThing, Selected, useDrawingTheme } from './sheet-parts';
import { SheetView } from './sheet-view';
import { useWidth } from './use-width';
import { walked } from './walking-order';

export const UndersidePage = () => <OneFace face="under" />;
export const InsidePage = ({ face }: { readonly face: string | undefined }) => <OneFace face={face ?? 'road'} inside />;

/** One face on its own sheet: the underside from below, or the inside of a wall, mirrored and in the same coordinates. */
const OneFace = ({ face, inside = false }: { readonly face: string; readonly inside?: boolean }) => {
  const { overview, preferences } = useDesk();
  const { rig } = overview;
  const [selected, setSelected] = useState<string>();
  const theme = useDrawingTheme();
  const [frame, width] = useWidth<HTMLDivElement>(960);
  const here = rig.faces.find((f) => f.id === face);
  const drawing = useMemo(() => {
    if (!here) return undefined;
    return inside ? insideDrawing(overview, face, preferences, width) : sheetDrawing(overview, new Set<Layer>(['open', 'sound', 'not-seen']), preferences, width, 'underside');
  }, [overview, here, face, inside, preferences, width]);
  if (!here || !drawing)
    return (
      <main className="desk-page" id="content">
        <h1>This rig has no such face</h1>
        <OtherSheets rig={rig} here="" />
      </main>
    );
  const stops = walked(rig).filter((w) => w.station.face === face);
  const title = inside ? here.inside_name : 'Underside';
  return (
    <main className="desk-page sheet-page one-face" id="content">
      <header className="sheet-head">
        <h1>{title}</h1>
        <p className="mut">
          {inside
            ? 'Mirrored, so that left is left as you stand before it. It shares the coordinates of the outside.'
            : 'Seen from below, nose to the left. Never lie under a rig that stands on a jack alone.'}{' '}
          Never lie under a rig that stands on a jack alone.
        </p>
      </header>
      <div className="sheet-drawing" ref={frame}>
        <SheetView
          drawing={drawing}
          theme={theme}
          zoomable
          selected={selected}
          onSelect={setSelected}
          onOpen={(thing) => openThing(overview, thing)}
          foot={<Selected overview={overview} selected={selected} />}
        />
        <OtherSheets rig={rig} here={inside ? face : 'underside'} />
      </div>
      <aside className="sheet-lists">
        <h2 className="group-head">{count(stops.length, 'station', 'stations')} on this face</h2>
        <StationList overview={overview} stops={stops} selected={selected} onSelect={setSelected} />
      </aside>
    </main>
  );
};
