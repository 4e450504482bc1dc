import { join, resolve } from 'node:path';
import { Command, Option } from 'commander';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { startHistory } from '#shared/commands/history';
import { evaluate } from '#shared/evaluate';
import { fieldRooms } from '#shared/margins/field-room';
import { type PlanContent, planContents } from '#shared/sheets/plan-content';
import { decodeDrawing } from '#shared/underlay/encode-drawing';
import { WAY_OUT_KINDS, type WayOutKind, wayOutFiles, wayOutName } from '#shared/ways-out/way-out-files';
import { replaceFile } from '../services/atomic-file.ts';
import { HostProblem, asHostProblem } from '../services/host-problem.ts';
import { readPlanFile } from '../services/plan-files.ts';
import { fileNameOf, planNameOf } from '../services/plan-places.ts';
import { readDrawings } from '../services/read-drawings.ts';
import type { ConsoleOut, ExitCode } from './console-out.ts';

interface Options {
  readonly as: WayOutKind;
  readonly out: string;
  readonly level?: string;
  /** False: how far nozzles may be moved is not worked out. */
  readonly tolerances: boolean;
}

/** The views of the level that was asked for, by its name or that of its void; all when none was. */
function viewsOf(contents: readonly PlanContent[], level: string | undefined): readonly PlanContent[] {
  if (level === undefined) return contents;
  const wished = level.trim().toLowerCase();
  const found = contents.filter(({ level: { id, name }, title }) => [id, name, title].some((words) => words.toLowerCase() === wished));
  if (found.length === 0) throw new HostProblem('refused', `The plan has no level “${level}”.`, '', `Its views are: ${contents.map(({ title }) => `“${title}”`).join(', ')}.`);
  return found;
}

/** `export PLAN --as KIND --out DIR`: plan views as drawings, or the schedules as tables. */
export function exportCommand(out: ConsoleOut, end: (code: ExitCode) => void): Command {
  return new Command('export')
    .description('write plan views as drawings (dxf, svg), or every schedule as tables (csv, xlsx)')
    .argument('<plan>', 'plan file (.nzw), bare plan.json, or sheets printed of it (.pdf)')
    .addOption(new Option('--as <kind>', 'dxf: real measures for drawing programs; svg: the view as it is printed; csv: one file a table; xlsx: all tables in one file').choices([...WAY_OUT_KINDS]).makeOptionMandatory())
    .requiredOption('--out <dir>', 'folder to write to; made when it is not there')
    .option('--level <name>', 'only this level, or this view of it such as "Ground floor, under the floor"; drawings only')
    .option('--no-tolerances', 'leave out how far each nozzle may be moved, which takes seconds a nozzle; tables only')
    .action(async (path: string, { as: kind, out: folder, level, tolerances }: Options) => {
      const { plan, assets } = await readPlanFile(resolve(path));
      const isTable = kind === 'csv' || kind === 'xlsx';
      if (isTable && level !== undefined) throw new HostProblem('refused', 'Tables are of the whole plan.', '', 'Leave --level out.');
      // Frozen as in the window, so that trials of places look only at what they touch.
      const evaluation = evaluate(startHistory(plan).present, workedDischarge());
      const rooms = isTable && tolerances ? fieldRooms(evaluation.derived, (done, all) => out.aside(`Looking how far nozzle ${done + 1} of ${all} may be moved`)) : undefined;
      const find = async (sha256: string) => assets.find((asset) => asset.sha256 === sha256);
      const packed = isTable ? new Map<string, Uint8Array>() : await readDrawings(plan, find, () => undefined, new AbortController().signal);
      const drawings = new Map([...packed].map(([id, bytes]) => [id, decodeDrawing(bytes)]));
      const views = viewsOf(planContents(evaluation.derived), level);
      const name = fileNameOf(planNameOf(path));
      let written = 0;
      for (const file of wayOutFiles(evaluation, kind, { views, drawings, rooms })) {
        const place = join(resolve(folder), wayOutName(name, file));
        await replaceFile(place, file.bytes).catch((error: unknown) => {
          throw asHostProblem(error, place);
        });
        out.line(place);
        written += 1;
      }
      if (written === 0) throw new HostProblem('refused', 'Nothing is drawn on that level.', '', 'Draw a room or pipe first.');
      const isShown = Object.values(plan.levels).flatMap(({ underlays }) => Object.values(underlays)).filter(({ visible, opacity }) => visible && opacity > 0);
      if (!isTable && isShown.some(({ id }) => !drawings.has(id))) out.aside('An imported floor plan could not be found in the plan file and is not in these drawings: lay them over the file that it came from.');
      end(0);
    });
}
