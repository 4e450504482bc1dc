import type { FieldRoomAnswer } from '../margins/field-room.ts';
import type { Derived } from '../derived/derived.ts';
import type { UnderlayDrawing } from '../underlay/drawing.ts';
import type { Datum } from '../derived/datum.ts';
import type { Issue, SheetSettings } from '../model/plan.ts';
import type { NumberedFinding } from './findings-table.ts';
import type { SheetLayout } from './frame.ts';
import type { PlanContent } from './plan-content.ts';
import type { ComposedView } from './plan-view.ts';
import { STRIP_HEIGHT_mm } from './scale-bars.ts';
import type { SectionCut } from './section-cuts.ts';
import type { SheetOptions } from './sheet.ts';
import { VIEW_TITLE_mm, missingLabels } from './sheet-draft.ts';
import type { PaperBox } from './text-box.ts';

/** What all view sheets of a set share. */
export interface ViewSet {
  readonly derived: Derived;
  readonly layout: SheetLayout;
  readonly drawings: ReadonlyMap<string, UnderlayDrawing>;
  readonly cuts: readonly SectionCut[];
  readonly findings: readonly NumberedFinding[];
  readonly datums: ReadonlyMap<string, Datum>;
  /** Where each nozzle may be put, by its key. */
  readonly rooms: ReadonlyMap<string, FieldRoomAnswer>;
  /** What was issued last. */
  readonly issue: Issue | null;
  readonly scale: SheetOptions['scale'];
  /** Where the user put dimension texts. */
  readonly dimensions: SheetSettings['dimensions'];
}

/** Paper for views: the drawing area above the strip with the check bar. */
export const viewArea = ({ area, sizes }: SheetLayout): PaperBox => ({ ...area, bottom: area.bottom - (STRIP_HEIGHT_mm + 2) * sizes.factor });

/** Paper for one view with its title below. */
export const viewRoom = (layout: SheetLayout): PaperBox => {
  const area = viewArea(layout);
  return { ...area, bottom: area.bottom - VIEW_TITLE_mm * layout.sizes.factor };
};

/** Title of a plan sheet. */
export const planTitle = ({ title }: PlanContent): string => `Nozzle and pipe plan: ${title}`;

/** Coarsest scale, text size counted in, at which a level with several rooms is drawn in one. */
export const CROWDED = 66;

/** Coarsest scale, text size counted in, that is not yet called small. */
const SMALL = 80;

/** What must be known before a plan is read: labels that are missing, paper that is small for what is on it. */
export function remarksOn({ layout, scale }: ViewSet, { unplaced, scale: drawn }: ComposedView): string[] {
  if (unplaced.length > 0) return missingLabels(unplaced.length);
  return scale === 'auto' && drawn * layout.sizes.factor > SMALL ? ['Small for this paper: a larger sheet reads more easily'] : [];
}
