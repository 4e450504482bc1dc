import { useRef, useState } from 'react';
import { addSheetNote } from '#shared/commands/add-sheet-note';
import { editSheetNote } from '#shared/commands/edit-sheet-note';
import type { Sheet } from '#shared/sheets/sheet';
import { useCommit, useShownPlan } from '../bench/use-plan.ts';
import { useActionContext, useDesk } from '../window-context.ts';
import { AstrayList } from './astray-list.tsx';
import { PaperBar } from './paper-bar.tsx';
import { PaperCanvas } from './paper-canvas.tsx';
import type { PaperHit, PaperPlace } from './paper-geometry.ts';
import { PaperOverlay } from './paper-overlay.tsx';
import { usePaperCamera } from './use-paper-camera.ts';
import { usePaperInput } from './use-paper-input.ts';

/** Width of a new note [mm]. */
const NOTE_mm = 60;

/** A note while it is being written: a new one has no id yet. */
interface Writing {
  readonly id: string | null;
  readonly at: PaperPlace;
  readonly text: string;
}

/** A sheet on the board in place of the plan: its views are moved, scaled and cropped on it, notes are written. */
export function PaperView() {
  const sheets = useDesk((desk) => desk.sheets);
  const number = useDesk((desk) => desk.paper);
  const sheet = number === null ? undefined : (sheets.find((each) => each.number === number) ?? sheets[0]);
  return sheet ? <Paper sheet={sheet} sheets={sheets} /> : null;
}

function Paper({ sheet, sheets }: { readonly sheet: Sheet; readonly sheets: readonly Sheet[] }) {
  const { desk } = useActionContext();
  const commit = useCommit();
  const { notes } = useShownPlan().settings.sheets;
  const field = useRef<HTMLDivElement>(null);
  const { camera, size, fit, zoom, pan } = usePaperCamera(field, sheet.paper);
  const [chosen, choose] = useState<PaperHit | null>(null);
  const [writing, setWriting] = useState<Writing | null>(null);
  // Going back to the paper takes the focus off the field, which would write the note a second time.
  const isDone = useRef(false);
  const write = (next: Writing | null): void => {
    isDone.current = next === null;
    setWriting(next);
  };
  const show = (paper: string | null): void => {
    choose(null);
    write(null);
    desk.set({ paper });
  };
  const step = (by: number): void => {
    const next = sheets[sheets.indexOf(sheet) + by];
    if (next) show(next.number);
  };
  const editNote = (id: string): void => {
    const note = notes[id];
    if (note) write({ id, at: { x: note.x_mm, y: note.y_mm }, text: note.text });
  };
  const addNote = (): void => write({ id: null, at: { x: camera.x + size.width / 2 / camera.scale - NOTE_mm / 2, y: camera.y + size.height / 2 / camera.scale }, text: '' });
  const { ghost, handlers } = usePaperInput({ sheet, camera, field, chosen, choose, editNote, addNote, step, fit, zoom, pan, close: () => show(null) });
  const finish = (text: string): void => {
    if (isDone.current) return;
    isDone.current = true;
    if (writing && text.trim() !== '') {
      const { id, at } = writing;
      if (id === null) commit(addSheetNote(sheet.home, at.x, at.y, NOTE_mm, text));
      else if (notes[id]?.text !== text) commit(editSheetNote(id, { text }));
    }
    write(null);
    field.current?.focus();
  };
  return (
    <section className="paper-view" aria-label="Sheet on the board">
      <PaperBar sheet={sheet} sheets={sheets} view={chosen?.kind === 'view' ? sheet.views.find(({ key }) => key === chosen.key) : undefined} dimension={chosen?.kind === 'dimension' ? sheet.dimensions.find(({ key }) => key === chosen.key) : undefined} show={show} fit={fit} addNote={addNote} />
      <div
        ref={field}
        className="paper-field"
        role="application"
        aria-label={`Paper of sheet ${sheet.number}`}
        aria-keyshortcuts="Tab Enter ArrowUp ArrowDown ArrowLeft ArrowRight Delete PageUp PageDown N + - 0 Escape"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the paper takes the keys of its views
        tabIndex={0}
        {...handlers}
      >
        <PaperCanvas sheet={sheet} camera={camera} size={size} />
        <PaperOverlay sheet={sheet} camera={camera} chosen={chosen} ghost={ghost} />
        {writing ? (
          <textarea
            aria-label="Note on the sheet"
            // biome-ignore lint/a11y/noAutofocus: the user asked for it just now
            autoFocus
            defaultValue={writing.text}
            style={{ left: (writing.at.x - camera.x) * camera.scale, top: (writing.at.y - camera.y) * camera.scale, width: Math.max(160, NOTE_mm * camera.scale) }}
            onPointerDown={(event) => event.stopPropagation()}
            onBlur={(event) => finish(event.currentTarget.value)}
            onKeyDown={(event) => {
              event.stopPropagation();
              if (event.key === 'Escape') write(null);
              if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) finish(event.currentTarget.value);
            }}
          />
        ) : null}
      </div>
      <AstrayList sheet={sheet} />
      {sheet.placing.length > 0 ? (
        <ul className="paper-remarks" aria-label="What became of the placed views">
          {sheet.placing.map((remark) => (
            <li key={remark}>{remark}</li>
          ))}
        </ul>
      ) : null}
    </section>
  );
}
