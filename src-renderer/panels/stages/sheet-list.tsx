import { useEffect, useRef, useState, useSyncExternalStore } from 'react';
import type { Evaluation } from '#shared/evaluate';
import { NOTHING_ASTRAY, astrayOf } from '#shared/sheets/astray';
import { composeSheets } from '#shared/sheets/compose-sheets';
import { logoOf } from '#shared/sheets/logo-of';
import { isPaperId } from '#shared/paper/papers';
import type { RevisedSince } from '#shared/sheets/changes-table';
import type { Sheet } from '#shared/sheets/sheet';
import type { UnderlayDrawing } from '#shared/underlay/drawing';
import type { UnderlayDrawings } from '../../store/underlay-drawings.ts';
import { photosToShow, wantPhotos } from '../../store/photos-to-show.ts';
import { presentEvaluation } from '../../store/selectors.ts';
import type { State } from '../../store/state.ts';
import { useStore } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import type { PrintChoice } from '../dialogs/print-form.tsx';
import { useDrawings } from '../../input/board-context.ts';
import { useRevisedSince } from '../revisions/use-revised-since.ts';
import { useActionContext, useDesk } from '../window-context.ts';
import { paintSheet, picturesOf } from './paint-sheet.ts';

const takeOffOf = (state: State) => state.session.takeOff;

/** Composing waits for this long after the last change [ms], so that typing stays smooth. */
const COMPOSE_AFTER_ms = 250;

function compose(evaluation: Evaluation, drawings: UnderlayDrawings, { paper, scale, set }: PrintChoice, takeOff: State['session']['takeOff'], changes: RevisedSince | undefined): Sheet[] {
  const { plan } = evaluation.derived;
  const read = new Map<string, UnderlayDrawing>();
  for (const level of Object.values(plan.levels)) {
    for (const underlay of Object.values(level.underlays)) {
      const drawing = drawings.find(plan, underlay);
      if (drawing) read.set(underlay.id, drawing);
    }
  }
  const { logo } = plan.settings.sheets.titleBlock;
  const picture = logo === null ? undefined : drawings.find(plan, { asset: logo, page: 1 });
  return composeSheets(evaluation, read, { logo: picture && logoOf(picture), photos: photosToShow(plan, drawings), changes, paper: isPaperId(paper) ? paper : 'auto', scale, set, takeOff, printedAt: 'preview' });
}

function SheetPicture({ sheet, width_px }: { readonly sheet: Sheet; readonly width_px: number }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const height_px = Math.round((width_px * sheet.paper.height_mm) / sheet.paper.width_mm);
  useEffect(() => {
    let isGone = false;
    void Promise.all([picturesOf(sheet), document.fonts.ready]).then(([pictures]) => {
      if (!isGone && canvas.current) paintSheet(canvas.current, sheet, pictures);
      for (const picture of pictures.values()) picture.close();
    });
    return () => {
      isGone = true;
    };
  }, [sheet]);
  return <canvas ref={canvas} className="sheet-picture" width={width_px} height={height_px} aria-label={`Sheet ${sheet.number}, ${sheet.title}`} role="img" />;
}

/** The sheets as they will print: number, title, and a picture that opens large. */
export function SheetList({ choice }: { readonly choice: PrintChoice }) {
  const evaluation = useStore(presentEvaluation);
  const takeOff = useStore(takeOffOf);
  const drawings = useDrawings();
  const [sheets, setSheets] = useState<readonly Sheet[] | null>(null);
  const read = useSyncExternalStore(drawings.subscribe, drawings.version);
  const { desk, host } = useActionContext();
  const { plan } = evaluation.derived;
  const changes = useRevisedSince(plan, host);
  const paper = useDesk((state) => state.paper);
  const astray = useDesk((state) => state.astray);
  useEffect(() => {
    if (choice.set === 'submittal') wantPhotos(plan, drawings);
  }, [plan, drawings, choice.set]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was read since belongs on the sheets
  useEffect(() => {
    const timer = setTimeout(() => {
      const composed = compose(evaluation, drawings, choice, takeOff, changes);
      setSheets(composed);
      // A field set leaves sheets out on purpose.
      desk.set({ sheets: composed, astray: choice.set === 'submittal' ? astrayOf(evaluation.derived.plan.settings.sheets, composed) : NOTHING_ASTRAY });
    }, COMPOSE_AFTER_ms);
    return () => clearTimeout(timer);
  }, [evaluation, drawings, read, choice, takeOff, changes, desk]);
  // The paper belongs to this stage: the plan comes back with the next one.
  useEffect(() => () => desk.set({ paper: null }), [desk]);
  return (
    <Slip title={sheets ? `Sheets: ${sheets.length}` : 'Sheets'} part="sheets">
      {sheets === null ? <p className="quiet">Composing…</p> : null}
      {astray.notes.length > 0 ? (
        <p role="status">
          {astray.notes.length === 1 ? 'A note stands on a sheet that is no longer in the set: it is not printed.' : `${astray.notes.length} notes stand on sheets that are no longer in the set: they are not printed.`} Lay any sheet on the board, to put {astray.notes.length === 1 ? 'it' : 'them'} there or to delete {astray.notes.length === 1 ? 'it' : 'them'}.
        </p>
      ) : null}
      {sheets?.length === 0 ? <p className="quiet">Nothing to print yet: draw an enclosure first.</p> : null}
      <ul className="sheet-list">
        {sheets?.map((sheet) => (
          <li key={sheet.number}>
            <button type="button" className="sheet-line" aria-pressed={sheet.number === paper} onClick={() => desk.set({ paper: sheet.number })} title="Lay it on the board, to look at it and to place its views">
              <SheetPicture sheet={sheet} width_px={560} />
              <span>
                <strong>{sheet.number}</strong> {sheet.title}
              </span>
              <span className="quiet">{sheet.paper.name}</span>
            </button>
          </li>
        ))}
      </ul>
    </Slip>
  );
}
