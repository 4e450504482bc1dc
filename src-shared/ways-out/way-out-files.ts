import { strToU8, zipSync } from 'fflate';
import type { Evaluation } from '../evaluate.ts';
import { type PlanContent, planContents } from '../sheets/plan-content.ts';
import type { UnderlayDrawing } from '../underlay/drawing.ts';
import { writeXlsx } from '../workbook/write-xlsx.ts';
import { planDrawing } from './dxf/plan-drawing.ts';
import { writeDxf } from './dxf/write-dxf.ts';
import { type SchedulesOptions, schedulesWorkbook } from './schedules/schedules-workbook.ts';
import { writeCsv } from './schedules/write-csv.ts';
import { planViewDrawing } from './svg/plan-view-svg.ts';
import { writeSvg } from './svg/write-svg.ts';

/** Files that a plan is given out as besides its sheets. */
export const WAY_OUT_KINDS = ['dxf', 'svg', 'csv', 'xlsx'] as const;
export type WayOutKind = (typeof WAY_OUT_KINDS)[number];

/** What it is of, for its name: the title of a view or of a table; blank: the whole plan. */
export interface WayOutFile {
  readonly of: string;
  readonly kind: WayOutKind;
  readonly bytes: Uint8Array;
}

export interface WayOutOptions extends SchedulesOptions {
  /** Views that are drawn: every level and void when missing. */
  readonly views?: readonly PlanContent[];
  /** Imported floor plans by underlay id; a view is drawn without those that are missing, and a drawing in DXF says so. */
  readonly drawings?: ReadonlyMap<string, UnderlayDrawing>;
}

type Evaluated = Pick<Evaluation, 'derived' | 'findings'>;

/**
 * A plan in one of the kinds, one step a file, so that whoever asks can say how far it is and stop.
 * Tables are of the whole plan; drawings are of one view each. A level with nothing on it gives no SVG.
 */
export function* wayOutFiles(evaluation: Evaluated, kind: WayOutKind, options: WayOutOptions = {}): Generator<WayOutFile> {
  const { derived } = evaluation;
  if (kind === 'xlsx') {
    yield { of: '', kind, bytes: writeXlsx(schedulesWorkbook(evaluation, options)) };
    return;
  }
  if (kind === 'csv') {
    for (const sheet of schedulesWorkbook(evaluation, options).sheets) yield { of: sheet.name, kind, bytes: strToU8(writeCsv(sheet)) };
    return;
  }
  for (const content of options.views ?? planContents(derived)) {
    if (kind === 'dxf') yield { of: content.title, kind, bytes: strToU8(writeDxf(planDrawing(derived, content, options.drawings))) };
    else {
      const drawing = planViewDrawing(evaluation, content, options.drawings ?? new Map());
      if (drawing) yield { of: content.title, kind, bytes: strToU8(writeSvg(drawing)) };
    }
  }
}

/** A name that every file system takes. */
export const wayOutName = (plan: string, { of, kind }: Pick<WayOutFile, 'of'> & { readonly kind: string }): string => {
  const words = [plan, of].filter((part) => part.trim() !== '').join(' ') || 'Plan';
  return `${words.replace(/[\\/:*?"<>|\p{C}]+/gu, '-').replace(/[. ]+$/, '').slice(0, 120)}.${kind}`;
};

/** Any fixed day: the same files then pack to the same bytes. */
const PACKED_AT = '1990-01-01T00:00:00';

/** Several files in one, each under its own name. */
export function packWayOut(plan: string, files: readonly { readonly of: string; readonly kind: string; readonly bytes: Uint8Array }[]): Uint8Array {
  const named: Record<string, Uint8Array> = {};
  for (const file of files) {
    const name = wayOutName(plan, file);
    const [stem, ending] = [name.slice(0, name.lastIndexOf('.')), name.slice(name.lastIndexOf('.'))];
    let free = name;
    for (let i = 2; named[free]; i += 1) free = `${stem} ${i}${ending}`;
    named[free] = file.bytes;
  }
  return zipSync(named, { mtime: PACKED_AT });
}
