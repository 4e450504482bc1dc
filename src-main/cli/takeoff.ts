import { basename, extname, resolve } from 'node:path';
import { Command, Option } from 'commander';
import { derivePlan } from '#shared/derived/derive-plan';
import { pieceLabel, takeOffCautions } from '#shared/sheets/take-off-words';
import { type BillOfMaterials, type BillOptions, USUAL_BILL, billOfMaterials } from '#shared/take-off/bill-of-materials';
import { roundCut } from '#shared/take-off/round-cut';
import { type LengthSystem, parseLength } from '#shared/units/length-text';
import { takeOffXlsx } from '#shared/workbook/take-off-xlsx';
import { replaceFile } from '../services/atomic-file.ts';
import { HostProblem, asHostProblem } from '../services/host-problem.ts';
import { readPlanFile } from '../services/plan-files.ts';
import { type ConsoleOut, type ExitCode, wrapped } from './console-out.ts';
import { takeOffCsv } from './takeoff-csv.ts';
import { takeOffLines } from './takeoff-text.ts';

interface Options {
  readonly json?: boolean;
  readonly csv?: boolean;
  readonly stock?: string;
  readonly kerf?: string;
  readonly xlsx?: string;
}

/** A typed length between two bounds, or the usual one. */
function lengthOf(what: string, text: string | undefined, usual_m: number, lengths: LengthSystem, least_m: number, greatest_m: number): number {
  if (text === undefined) return usual_m;
  const read = parseLength(text, lengths);
  if (!read.ok) throw new HostProblem('refused', `${what}: ${read.reason}`, '', '');
  if (!(read.length_m >= least_m && read.length_m <= greatest_m)) throw new HostProblem('refused', `${what} must be from ${least_m * 1000} mm to ${greatest_m * 1000} mm.`, '', '');
  return read.length_m;
}

/** The bill as it is printed in JSON: base SI, unrounded; rounded cuts beside. */
function asJson(bill: BillOfMaterials): Readonly<Record<string, unknown>> {
  const { pieces, pipe, ...rest } = bill;
  const indexOf = new Map(pieces.map((piece, i) => [piece, i]));
  return {
    ...rest,
    pipe: pipe.map(({ pieces: ordered, nesting, reckoned_m: _, ...order }) => ({
      ...order,
      pieces: ordered.length,
      stockCount: nesting.bars.length,
      leastBars: nesting.leastBars,
      isFewest: nesting.isFewest,
      waste_m: nesting.waste_m,
      leastWaste_m: nesting.leastWaste_m,
      /** Indices in `pieces`. */
      bars: nesting.bars.map((bar) => bar.flatMap((index) => ordered.slice(index, index + 1).map((piece) => indexOf.get(piece)))),
    })),
    pieces: pieces.map((piece) => ({
      label: pieceLabel(piece),
      ...piece,
      cutSixteenths: piece.cut_m === null ? null : roundCut(piece.cut_m, 'feet'),
      cutMillimetres: piece.cut_m === null ? null : roundCut(piece.cut_m, 'metric'),
    })),
  };
}

/** `takeoff PLAN`: what a plan is built of, and how its pipe is cut. */
export function takeoffCommand(out: ConsoleOut, end: (code: ExitCode) => void): Command {
  return new Command('takeoff')
    .description('take a plan off: bill of materials, cut list, and how the pieces are cut from stock')
    .argument('<plan>', 'plan file (.nzw), bare plan.json, or sheets printed of it (.pdf)')
    .option('--json', 'print one JSON object: plan, bill of materials, pieces; base SI')
    .addOption(new Option('--csv', 'print one table of comma-separated values').conflicts('json'))
    .addOption(new Option('--xlsx <file>', 'write a spreadsheet (.xlsx) to this file, in place of one that is there').conflicts(['json', 'csv']))
    .option('--stock <length>', "length that pipe is bought in; 21' unless given")
    .option('--kerf <length>', 'width of a saw cut; 1/8" unless given')
    .addHelpText('after', '\nEnds with 0 when every piece can be made, 1 when one is too short for its fittings, 2 when the plan cannot be read.')
    .action(async (path: string, { json = false, csv = false, stock, kerf, xlsx }: Options) => {
      const { plan, remarks } = await readPlanFile(resolve(path));
      const { lengths } = plan.settings;
      const options: BillOptions = {
        ...USUAL_BILL,
        stockLength_m: lengthOf('Stock length', stock, USUAL_BILL.stockLength_m, lengths, 0.5, 30),
        kerf_m: lengthOf('Kerf', kerf, USUAL_BILL.kerf_m, lengths, 0, 0.02),
      };
      const derived = derivePlan(plan);
      const bill = billOfMaterials(derived, options);
      const networkName = (id: string): string => plan.networks[id]?.name || id;
      if (xlsx !== undefined) {
        const place = resolve(xlsx);
        if (extname(place).toLowerCase() !== '.xlsx') throw new HostProblem('refused', 'A spreadsheet is written to a file that ends in .xlsx.', xlsx, 'Give its name with that ending.');
        await replaceFile(place, takeOffXlsx(plan, derived, bill)).catch((error: unknown) => {
          throw asHostProblem(error, place);
        });
        out.line(place);
        for (const caution of takeOffCautions(bill)) out.aside(caution);
      } else if (json) out.line(JSON.stringify({ plan: { file: resolve(path), project: plan.info.project, remarks }, ...asJson(bill), cautions: takeOffCautions(bill) }, null, 2));
      else if (csv) {
        for (const row of takeOffCsv(bill, networkName)) out.line(row);
        for (const caution of takeOffCautions(bill)) out.aside(caution);
      } else {
        out.line(`${plan.info.project || 'Plan'} (${basename(path)})`);
        for (const remark of remarks) for (const line of wrapped(remark, out.width, '  ')) out.line(line);
        for (const line of takeOffLines(bill, { networkName, nozzleName: (id, nozzle) => plan.networks[id]?.nozzles[nozzle]?.name || nozzle }, lengths, out.width)) out.line(line);
      }
      end(bill.pieces.some(({ isTooShort }) => isTooShort) ? 1 : 0);
    });
}
