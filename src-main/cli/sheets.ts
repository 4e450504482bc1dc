import { join, resolve } from 'node:path';
import { Command, InvalidArgumentError, Option } from 'commander';
import { PAPER_IDS } from '#shared/model/paper-ids';
import type { IssuedSet, Plan } from '#shared/model/plan';
import { parseScale } from '#shared/paper/scales';
import { replaceFile } from '../services/atomic-file.ts';
import { HostProblem, asHostProblem } from '../services/host-problem.ts';
import { issuedChanges, reprintIssue } from '../services/issued-sets.ts';
import { readPlanFile } from '../services/plan-files.ts';
import { fileNameOf, planNameOf } from '../services/plan-places.ts';
import { type PrintChoice, printChoiceOf } from '../services/print-choice.ts';
import { printPlan } from '../services/print-plan.ts';
import type { ConsoleOut, ExitCode } from './console-out.ts';

/** A scale as typed: "50", "1:50", "1/4\" = 1'-0\"" or "auto". */
function readScale(text: string): number | 'auto' {
  if (text === 'auto') return text;
  const scale = parseScale(text);
  if (scale === undefined) throw new InvalidArgumentError('A scale is a number from 1 to 1000 such as 50 or 1:50, one such as 1/4"=1\'-0", or "auto".');
  return scale;
}

interface Options {
  readonly out: string;
  readonly set: PrintChoice['set'];
  readonly paper: string;
  readonly scale: number | 'auto';
  /** Mark of an issued set. */
  readonly issue?: string;
}

/** The issued set of a mark. */
function issuedSetIn({ issuedSets }: Plan, mark: string): IssuedSet {
  const found = issuedSets.find((set) => set.mark === mark);
  if (found) return found;
  const marks = issuedSets.map((set) => set.mark).join(', ');
  throw new HostProblem('not-found', `This plan has no issued set ${mark}.`, '', marks ? `Issued sets: ${marks}.` : 'No set was issued yet.');
}

/** `sheets PLAN --out DIR`: a plan's sheets as a PDF. */
export function sheetsCommand(out: ConsoleOut, end: (code: ExitCode) => void): Command {
  return new Command('sheets')
    .description("print a plan's sheets as a PDF")
    .argument('<plan>', 'plan file (.nzw), bare plan.json, or sheets printed of it (.pdf)')
    .requiredOption('--out <dir>', 'folder to write the PDF to; made when it is not there')
    .addOption(new Option('--set <set>', 'which set').choices(['submittal', 'field']).default('submittal'))
    .addOption(new Option('--paper <paper>', 'paper, landscape').choices(['auto', ...PAPER_IDS]).default('auto'))
    .option('--scale <scale>', 'scale such as 50, 1:50 or 1/4"=1\'-0", or auto for the largest that fits', readScale, 'auto' as const)
    .option('--issue <mark>', 'an issued set as it was given out, such as A; one that was replaced says so across every sheet')
    .action(async (path: string, options: Options) => {
      const { plan, assets } = await readPlanFile(resolve(path));
      const issued = options.issue === undefined ? undefined : issuedSetIn(plan, options.issue);
      const readAsset = async (sha256: string) => {
        const found = assets.find((asset) => asset.sha256 === sha256);
        const name = Object.values(plan.assets).find((asset) => asset.sha256 === sha256)?.name;
        if (!found) out.aside(`The file ${name} is not in ${path}: the sheets are printed without it, and say so.`);
        return found;
      };
      const now = out.now();
      const find = async (sha256: string) => assets.find((asset) => asset.sha256 === sha256);
      const changes = issued ? undefined : await issuedChanges(plan, find);
      if (changes?.unread !== undefined) out.aside(changes.unread);
      const pdf = issued
        ? await reprintIssue(plan, issued.id, null, find, now)
        : await printPlan(plan, { ...printChoiceOf(options.paper, options.scale, options.set), changes }, readAsset, now);
      const place = join(resolve(options.out), `${fileNameOf(planNameOf(path))} ${issued ? `set ${fileNameOf(issued.mark)}` : options.set} sheets.pdf`);
      await replaceFile(place, pdf).catch((error: unknown) => {
        throw asHostProblem(error, place);
      });
      out.line(place);
      end(0);
    });
}
