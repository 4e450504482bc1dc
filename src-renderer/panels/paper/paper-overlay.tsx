import type { Sheet } from '#shared/sheets/sheet';
import { viewOfDimension } from '#shared/sheets/hand-placed';
import { type PaperBox, cornersOf } from '#shared/sheets/text-box';
import type { PaperCamera } from '../stages/paint-sheet.ts';
import { CORNERS, type PaperHit, cornerOf, shownBox } from './paper-geometry.ts';

interface PaperOverlayProps {
  readonly sheet: Sheet;
  readonly camera: PaperCamera;
  readonly chosen: PaperHit | null;
  /** The box as a drag would leave it, and the lines that it stands on [mm]. */
  readonly ghost: { readonly box: PaperBox; readonly xs: readonly number[]; readonly ys: readonly number[]; readonly corners?: readonly number[] | undefined } | null;
}

/** Over the paper: what can be taken hold of, what is chosen, guide lines. */
export function PaperOverlay({ sheet, camera, chosen, ghost }: PaperOverlayProps) {
  const x = (at: number): number => (at - camera.x) * camera.scale;
  const y = (at: number): number => (at - camera.y) * camera.scale;
  const rectangle = (box: PaperBox, name: string, key: string) => (
    <rect key={key} data-key={key} className={name} x={x(box.left)} y={y(box.top)} width={(box.right - box.left) * camera.scale} height={(box.bottom - box.top) * camera.scale} />
  );
  const polygon = (corners: readonly number[], name: string, key: string) => (
    <polygon key={key} data-dimension={key} className={name} points={corners.map((at, i) => (i % 2 === 0 ? x(at) : y(at))).join(' ')} />
  );
  const inView = chosen?.kind === 'view' ? chosen.key : chosen?.kind === 'dimension' ? viewOfDimension(chosen.key) : undefined;
  const view = chosen?.kind === 'view' ? sheet.views.find(({ key }) => key === chosen.key) : undefined;
  const shown = view && shownBox(view);
  return (
    <svg aria-hidden="true">
      {sheet.views.map(({ key, box }) => rectangle(box, key === view?.key ? 'paper-hit is-chosen' : 'paper-hit', key))}
      {sheet.notes.map(({ id, box }) => rectangle(box, chosen?.kind === 'note' && chosen.id === id ? 'paper-hit is-chosen' : 'paper-hit', id))}
      {shown
        ? CORNERS.map((corner) => {
            const at = cornerOf(shown, corner);
            return <rect key={corner} className="paper-handle" data-corner={corner} x={x(at.x) - 5} y={y(at.y) - 5} width={10} height={10} />;
          })
        : null}
      {sheet.dimensions
        .filter(({ key, isByHand }) => isByHand || viewOfDimension(key) === inView)
        .map(({ key, box, isByHand }) => polygon(cornersOf({ ...box, halfWidth: box.halfWidth + 1, halfHeight: box.halfHeight + 0.6 }), `paper-text${isByHand ? ' is-by-hand' : ''}${chosen?.kind === 'dimension' && chosen.key === key ? ' is-chosen' : ''}`, key))}
      {ghost?.corners ? polygon(ghost.corners, 'paper-text is-chosen', 'ghost') : ghost ? rectangle(ghost.box, 'paper-hit is-chosen', 'ghost') : null}
      {ghost?.xs.map((at) => <line key={`x${at}`} className="paper-guide" x1={x(at)} x2={x(at)} y1={y(0)} y2={y(sheet.paper.height_mm)} />)}
      {ghost?.ys.map((at) => <line key={`y${at}`} className="paper-guide" y1={y(at)} y2={y(at)} x1={x(0)} x2={x(sheet.paper.width_mm)} />)}
    </svg>
  );
}
