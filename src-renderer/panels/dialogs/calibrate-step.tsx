import { useState } from 'react';
import { layersHiddenByFile } from '#shared/underlay/placement';
import type { RefOf } from '#shared/model/plan';
import { bareName } from '../../actions/plan-file.ts';
import { fitLevel } from '../../actions/fit-view.ts';
import { countOf } from '../../plan-words.ts';
import { useFigures } from '../bench/use-plan.ts';
import { Choice, type ChoiceOption } from '../fields/choice.tsx';
import { LengthField } from '../fields/quantity-field.tsx';
import { Readings } from '../bench/slip.tsx';
import { useActionContext } from '../window-context.ts';
import type { ReadPlan } from './import-dialog.tsx';
import { layUnder } from './lay-under.ts';
import { DRAWN_IN, type DrawnIn, type ScaleWay, metresPerUnitBy, scaleWays } from './scale-choices.ts';

const KIND = { dxf: 'DXF drawing', pdf: 'PDF', svg: 'SVG drawing', png: 'PNG picture', jpeg: 'JPEG picture' } as const;

interface CalibrateStepProps {
  readonly read: ReadPlan;
  onPage(page: number): void;
  onDone(): void;
}

/** What an imported file was found to be, and the choice of its scale. */
export function CalibrateStep({ read, onPage, onDone }: CalibrateStepProps) {
  const context = useActionContext();
  const { store, drawings } = context;
  const { length } = useFigures();
  const { report, drawing, asset, page } = read;
  // The name of the header entry behind the unit means nothing to the user.
  const plainUnits = report.unitsText.replace(/ \(\$\w+ \d+\)/, '');
  const ways = scaleWays(report);
  const [way, setWay] = useState<ScaleWay>(ways[0] ?? 'points');
  const [unit, setUnit] = useState<DrawnIn>('mm');
  const [width_m, setWidth] = useState<number | null>(null);
  const [isMore, setMore] = useState(false);
  const metresPerUnit = metresPerUnitBy(way, report, unit, width_m);
  const sizeAt = (metres: number | null): string => (metres === null ? '' : `${length(report.width * metres)} × ${length(report.height * metres)}`);

  const lay = (): void => {
    drawings.keep(asset.sha256, page, drawing);
    const { level } = store.get().session;
    const done = store.commit(
      layUnder({
        level,
        asset,
        kind: report.kind,
        page,
        name: bareName(asset.name).replace(/\.\w+$/, ''),
        extents: drawing.extents,
        hiddenLayers: layersHiddenByFile(drawing.layers),
        metresPerUnit,
        trueWidth_m: way === 'width' ? width_m : null,
      }),
    );
    const laid = store.get().session.selection.find((ref): ref is RefOf<'underlay'> => ref.kind === 'underlay');
    if (!done || !laid) return;
    onDone();
    store.session({ stage: 'survey', tool: way === 'points' ? 'calibrate' : 'select', selection: [laid] });
    fitLevel(context);
  };

  const label: Readonly<Record<ScaleWay, React.ReactNode>> = {
    file: (
      <>
        <strong>Take the file’s own units</strong>
        <span className="quiet">
          {plainUnits}: the plan is then {sizeAt(report.metresPerUnit)}
        </span>
      </>
    ),
    unit: (
      <>
        <strong>Say what it was drawn in</strong>
        <span className="quiet">When the file’s own word is missing or wrong</span>
      </>
    ),
    points: (
      <>
        <strong>Pick two places and type the true distance</strong>
        <span className="quiet">The surest way: something you measured, as long as possible</span>
      </>
    ),
    width: (
      <>
        <strong>Type the true width of the whole drawing</strong>
        <span className="quiet">From its leftmost line to its rightmost</span>
      </>
    ),
  };
  return (
    <div className="calibrate">
      <Readings
        rows={[
          { label: 'Kind', value: KIND[report.kind], note: report.pageCount > 1 ? `page ${page} of ${report.pageCount}` : '' },
          { label: 'What is in it', value: [countOf(report.segments, 'line'), report.closedOutlines > 0 ? countOf(report.closedOutlines, 'closed outline') : '', report.texts > 0 ? countOf(report.texts, 'text') : '', report.images > 0 ? countOf(report.images, 'picture') : ''].filter(Boolean).join(', ') },
          { label: 'Layers', value: report.layers.length > 1 ? report.layers.slice(0, 6).map((layer) => layer.name).join(', ') + (report.layers.length > 6 ? ` and ${report.layers.length - 6} more` : '') : 'one' },
          { label: 'Units', value: plainUnits },
        ]}
      />
      {report.pageCount > 1 ? (
        <Choice label="Page" value={String(page)} options={Array.from({ length: Math.min(report.pageCount, 500) }, (_, i) => ({ value: String(i + 1), label: `Page ${i + 1}` }))} onCommit={(chosen) => onPage(Number(chosen))} />
      ) : null}
      {report.warnings.length > 0 ? (
        <div className="advice">
          <ul>
            {report.warnings.slice(0, isMore ? undefined : 3).map((warning) => (
              <li key={warning}>{warning}</li>
            ))}
          </ul>
          {report.warnings.length > 3 && !isMore ? (
            <button type="button" className="button is-slim" onClick={() => setMore(true)}>
              {report.warnings.length - 3} more
            </button>
          ) : null}
        </div>
      ) : null}
      {report.unitsDoubt ? (
        <p className="doubt" role="alert">
          <strong>The units are doubtful.</strong> {report.unitsDoubt}
        </p>
      ) : null}
      <fieldset className="ways">
        <legend>How does it get its scale?</legend>
        {ways.map((each) => (
          <label key={each} className="way">
            <input type="radio" name="scale-way" checked={way === each} onChange={() => setWay(each)} />
            <span className="way-text">{label[each]}</span>
          </label>
        ))}
      </fieldset>
      {way === 'unit' ? (
        <Choice label="Drawn in" value={unit} options={DRAWN_IN.map((each): ChoiceOption<DrawnIn> => ({ value: each.id, label: `${each.name}: ${sizeAt(each.metres)}` }))} onCommit={(chosen) => setUnit(chosen)} wide />
      ) : null}
      {way === 'width' ? <LengthField label="True width" value={width_m} least={0.01} onCommit={setWidth} help={width_m === null ? 'Measured on site, not read from the drawing.' : `The plan is then ${sizeAt(metresPerUnit)}.`} autoFocus /> : null}
      <footer className="dialog-foot">
        <span className="quiet">{way === 'points' ? 'Next you pick the two places on the board.' : 'Check it against a second distance that you measured: layouts built on a wrong scale do not fit.'}</span>
        <button type="button" className="button is-main" disabled={way === 'width' && width_m === null} onClick={lay}>
          Lay it under the drawing
        </button>
      </footer>
    </div>
  );
}
