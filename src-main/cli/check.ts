import { basename, resolve } from 'node:path';
import { Command } from 'commander';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { evaluate } from '#shared/evaluate';
import { type Finding, type Verdict, VERDICTS } from '#shared/rules/finding';
import { readPlanFile } from '../services/plan-files.ts';
import { type ConsoleOut, type ExitCode, wrapped } from './console-out.ts';

const HEADINGS: Readonly<Record<Verdict, string>> = {
  stop: '■ Stop: must be cured',
  warn: '△ Warning: needs a decision',
  'not-checked': '◌ Not checked: data is missing',
  note: '• Note',
  ok: '✓ Kept',
};
const CAUTION = "Preliminary engineering check. The unit's own manual, its listing, the adopted code and licensed practice decide.";

interface Summary {
  readonly stop: number;
  readonly warn: number;
  readonly notChecked: number;
  readonly note: number;
  readonly ok: number;
}

/** How many findings there are of each verdict. */
export function summaryOf(findings: readonly Finding[]): Summary {
  const count = (verdict: Verdict): number => findings.filter((finding) => finding.verdict === verdict).length;
  return { stop: count('stop'), warn: count('warn'), notChecked: count('not-checked'), note: count('note'), ok: count('ok') };
}

const counted = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;

function findingLines({ rule, title, name, text, cure, basis }: Finding, width: number): string[] {
  return [
    `  ${rule}  ${title} · ${name}`,
    ...wrapped(text, width, '      '),
    ...(cure ? wrapped(`Cure: ${cure.text}`, width, '      ') : []),
    ...wrapped(`Basis: ${basis.formula} (${basis.source})`, width, '      '),
    ...(basis.caution ? wrapped(`Caution: ${basis.caution}`, width, '      ') : []),
  ];
}

function tell(out: ConsoleOut, findings: readonly Finding[], showsKept: boolean): void {
  for (const verdict of VERDICTS) {
    const found = findings.filter((finding) => finding.verdict === verdict);
    if (found.length === 0 || (verdict === 'ok' && !showsKept)) continue;
    out.line('');
    out.line(`${HEADINGS[verdict]} (${found.length})`);
    for (const finding of found) for (const line of findingLines(finding, out.width)) out.line(line);
  }
}

/** `check PLAN`: every finding of a plan and how many there are. */
export function checkCommand(out: ConsoleOut, end: (code: ExitCode) => void): Command {
  return new Command('check')
    .description('check a plan: every finding, and a summary')
    .argument('<plan>', 'plan file (.nzw) or bare plan.json')
    .option('--json', 'print one JSON object: plan, summary, findings')
    .option('--all', 'list the checks that are kept as well')
    .addHelpText('after', '\nEnds with 0 when nothing stops the layout, 1 when something does, 2 when the plan cannot be read.')
    .action(async (path: string, { json = false, all = false }: { json?: boolean; all?: boolean }) => {
      const { plan, remarks } = await readPlanFile(resolve(path));
      const { findings } = evaluate(plan, workedDischarge());
      const summary = summaryOf(findings);
      if (json) {
        out.line(JSON.stringify({ plan: { file: resolve(path), project: plan.info.project, remarks }, summary, findings }, null, 2));
      } else {
        out.line(`${plan.info.project || 'Plan'} (${basename(path)})`);
        for (const remark of remarks) for (const line of wrapped(remark, out.width, '  ')) out.line(line);
        tell(out, findings, all);
        out.line('');
        out.line(`${summary.stop} stop, ${counted(summary.warn, 'warning')}, ${summary.notChecked} not checked, ${counted(summary.note, 'note')}, ${summary.ok} kept`);
        for (const line of wrapped(CAUTION, out.width)) out.line(line);
      }
      end(summary.stop > 0 ? 1 : 0);
    });
}
