import { useMemo } from 'react';
import { looseSkinDrawing } from '../../../../src/drawing';
import type { LooseSkin } from '../../../../src/plan';
import { upperFirst, useDesk } from '../desk';
import { desk } from '../paths';
import { Picture } from '../picture';
import { useWidth } from '../use-width';
import { FigureButton } from '../worksheet-box';

/** Places where the skin of a bonded wall has let go: outlines through time, what was measured, what comes next. */
export const LooseSkins = () => {
  const { overview } = useDesk();
  const skins = overview.plan.water.loose_skins ?? [];
  if (skins.length === 0) return null;
  return (
    <section className="loose-skins">
      <h2 className="group-head">Loose skin</h2>
      {skins.map((s) => (
        <Skin key={s.id} skin={s} />
      ))}
    </section>
  );
};

const Skin = ({ skin }: { readonly skin: LooseSkin }) => {
  const { id, overview, preferences } = useDesk();
  const [frame, width] = useWidth<HTMLDivElement>(560, 20);
  const drawing = useMemo(() => looseSkinDrawing(overview.rig, skin, { preferences, fit_px: width }), [overview.rig, skin, preferences, width]);
  return (
    <div className="loose-skin" ref={frame}>
      <h3>{skin.words}</h3>
      <p>{skin.sentence}</p>
      {drawing.primitives.length > 0 && (
        <>
          <Picture drawing={drawing} />
          <p className="mut small">Heavy line: as it was drawn last. Dashed grey: before. {(skin.taps?.hull_m.length ?? 0) >= 3 ? 'Dashed in colour: what sounds hollow. ' : ''}</p>
        </>
      )}
      <ul className="plain">
        {skin.because.map((b) => (
          <li key={b.text} className="small">
            {b.text} {b.worksheet && <FigureButton worked={{ worksheet: b.worksheet.id, inputs: b.worksheet.inputs }}>worksheet</FigureButton>}
          </li>
        ))}
      </ul>
      {skin.steps.length > 0 && (
        <ol className="how-steps">
          {skin.steps.map((s) => (
            <li key={s}>{upperFirst(s)}</li>
          ))}
        </ol>
      )}
      <p className="buttons">
        <a className="button" href={desk.add(id, { kind: 'skin-condition', place: skin.place })}>
          Draw it again
        </a>
        <a className="button" href={desk.add(id, { kind: 'tap-sound' })}>
          Record a tap
        </a>
      </p>
    </div>
  );
};
