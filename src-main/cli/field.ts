import { basename, extname, resolve } from 'node:path';
import { Command } from 'commander';
import { derivePlan } from '#shared/derived/derive-plan';
import { fieldTableText } from '#shared/site/field-table';
import { readEntries } from '#shared/site/read-entries';
import { replaceFile } from '../services/atomic-file.ts';
import { readFieldRecord } from '../services/field/read-field-record.ts';
import { HostProblem, asHostProblem } from '../services/host-problem.ts';
import { readPlanFile } from '../services/plan-files.ts';
import { readBytes } from '../services/read-bytes.ts';
import { type ConsoleOut, type ExitCode, wrapped } from './console-out.ts';
import { fieldCounts, fieldLines, isAsked } from './field-text.ts';

interface Options {
  readonly json?: boolean;
  readonly csvOut?: string;
}

/** `field PLAN [FILE]`: what a filled field sheet says, judged against the plan; or its empty table. */
export function fieldCommand(out: ConsoleOut, end: (code: ExitCode) => void): Command {
  return new Command('field')
    .description('read a filled field sheet (PDF form or CSV) and answer every row; nothing is changed')
    .argument('<plan>', 'plan file (.nzw) or bare plan.json')
    .argument('[file]', 'filled field sheet (.pdf) or its table (.csv)')
    .option('--json', 'print one JSON object: plan, file, match, remarks, rows, checks; base SI')
    .option('--csv-out <file>', 'write the table of field dimensions to be filled in (.csv), in place of one that is there')
    .addHelpText('after', '\nEnds with 0 when nothing that was written needs a decision, 1 when something does, 2 when plan or file cannot be read.')
    .action(async (path: string, file: string | undefined, { json = false, csvOut }: Options) => {
      if (file === undefined && csvOut === undefined) throw new HostProblem('refused', 'There is nothing to read and nothing to write.', '', 'Give a filled field sheet, or --csv-out with a file.');
      const { plan } = await readPlanFile(resolve(path));
      const derived = derivePlan(plan);
      if (csvOut !== undefined) {
        const place = resolve(csvOut);
        if (extname(place).toLowerCase() !== '.csv') throw new HostProblem('refused', 'The table is written to a file that ends in .csv.', csvOut, 'Give its name with that ending.');
        await replaceFile(place, new TextEncoder().encode(fieldTableText(derived))).catch((error: unknown) => {
          throw asHostProblem(error, place);
        });
        if (json) out.aside(place);
        else out.line(place);
      }
      if (file === undefined) return end(0);
      const bytes = await readBytes(resolve(file)).catch((error: unknown) => {
        throw asHostProblem(error, file);
      });
      const reading = readEntries(await readFieldRecord(bytes, basename(file)), derived);
      if (json) out.line(JSON.stringify({ plan: { file: resolve(path), project: plan.info.project }, file: resolve(file), ...reading }, null, 2));
      else {
        out.line(`${plan.info.project || 'Plan'} (${basename(path)}), ${basename(file)}`);
        for (const line of fieldLines(reading, plan.settings.lengths, out.width)) out.line(line);
        out.line('');
        for (const line of wrapped(`${fieldCounts(reading)}. Nothing was changed.`, out.width)) out.line(line);
      }
      end(reading.rows.some(isAsked) || reading.checks.some(isAsked) ? 1 : 0);
    });
}
