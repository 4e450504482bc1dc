import { basename, resolve } from 'node:path';
import { Command } from 'commander';
import { type Assumption, ASSUMPTION_TOPICS, ASSUMPTION_TOPIC_WORDS } from '#shared/assumptions/assumption';
import { assumptionsOf } from '#shared/assumptions/assumptions-of';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { evaluate } from '#shared/evaluate';
import { catalogueOf } from '#shared/rules/catalogue';
import { countFindings } from '#shared/rules/count-findings';
import { type Finding, type Verdict, VERDICTS } from '#shared/rules/finding';
import { RULES } from '#shared/rules/index';
import type { LapsedWaiver } from '#shared/rules/waive';
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
  /** Findings that somebody accepted as they are, counted nowhere else. */
  readonly accepted: number;
}

/** How many findings there are of each verdict; those that somebody accepted are counted by themselves. */
export function summaryOf(findings: readonly Finding[]): Summary {
  const { stop, warn, note, ok, accepted, 'not-checked': notChecked } = countFindings(findings);
  return { stop, warn, notChecked, note, ok, accepted };
}

const counted = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;

function findingLines({ rule, title, name, text, cure, basis, waiver }: Finding, width: number): string[] {
  return [
    `  ${rule}  ${title} · ${name}`,
    ...wrapped(text, width, '      '),
    ...(waiver ? wrapped(`Accepted by ${waiver.by}${waiver.date ? `, ${waiver.date}` : ''}: ${waiver.reason}`, width, '      ') : []),
    ...(cure && !waiver ? wrapped(`Cure: ${cure.text}`, width, '      ') : []),
    ...wrapped(`Basis: ${basis.formula} (${basis.source})`, width, '      '),
    ...(basis.caution ? wrapped(`Caution: ${basis.caution}`, width, '      ') : []),
  ];
}

function tellPart(out: ConsoleOut, heading: string, found: readonly Finding[]): void {
  if (found.length === 0) return;
  out.line('');
  out.line(`${heading} (${found.length})`);
  for (const finding of found) for (const line of findingLines(finding, out.width)) out.line(line);
}

function tell(out: ConsoleOut, findings: readonly Finding[], showsKept: boolean): void {
  for (const verdict of VERDICTS) if (verdict !== 'ok' || showsKept) tellPart(out, HEADINGS[verdict], findings.filter((finding) => finding.verdict === verdict && !finding.waiver));
  tellPart(out, '☑ Accepted as it is, with a name and a reason', findings.filter(({ waiver }) => waiver));
}

const LAPSED_WORDS: Readonly<Record<LapsedWaiver['because'], string>> = {
  gone: 'what it was about is no longer found',
  kept: 'the limit is kept by now',
  changed: 'what it rested on has changed, so that it is open again',
};

function tellLapsed(out: ConsoleOut, lapsed: readonly LapsedWaiver[]): void {
  if (lapsed.length === 0) return;
  out.line('');
  out.line(`Acceptances that have lapsed (${lapsed.length})`);
  for (const { waiver, because } of lapsed) for (const line of wrapped(`${waiver.rule} ${waiver.name}, accepted by ${waiver.by}: ${LAPSED_WORDS[because]}.`, out.width, '  ')) out.line(line);
}

function tellAssumptions(out: ConsoleOut, assumptions: readonly Assumption[]): void {
  if (assumptions.length === 0) return;
  out.line('');
  out.line(`Taken for granted (${assumptions.length})`);
  for (const topic of ASSUMPTION_TOPICS) {
    const about = assumptions.filter((assumption) => assumption.topic === topic);
    if (about.length > 0) out.line(`  ${ASSUMPTION_TOPIC_WORDS[topic]}`);
    for (const { name, taken, affects, change } of about) for (const line of wrapped(`${name}: ${taken} Affects: ${affects} ${change}`, out.width, '      ')) out.line(line);
  }
}

/** `check PLAN`: every finding of a plan and how many there are. */
export function checkCommand(out: ConsoleOut, end: (code: ExitCode) => void): Command {
  return new Command('check')
    .description('check a plan: every finding, and a summary')
    .argument('<plan>', 'plan file (.nzw), bare plan.json, or sheets printed of it (.pdf)')
    .option('--json', 'print one JSON object: plan, summary, every check, findings, acceptances that lapsed, assumptions')
    .option('--all', 'list the checks that are kept, and what was taken for granted, as well')
    .addHelpText('after', '\nEnds with 0 when nothing stops the layout, 1 when something does, 2 when the plan cannot be read. A stop that somebody accepted does not count.')
    .action(async (path: string, { json = false, all = false }: { json?: boolean; all?: boolean }) => {
      const { plan, remarks } = await readPlanFile(resolve(path));
      const evaluation = evaluate(plan, workedDischarge());
      const { findings, lapsed } = evaluation;
      const assumptions = assumptionsOf(evaluation);
      const summary = summaryOf(findings);
      if (json) {
        out.line(JSON.stringify({ plan: { file: resolve(path), project: plan.info.project, remarks }, summary, catalogue: catalogueOf(RULES, findings), findings, lapsed, assumptions }, null, 2));
      } else {
        out.line(`${plan.info.project || 'Plan'} (${basename(path)})`);
        for (const remark of remarks) for (const line of wrapped(remark, out.width, '  ')) out.line(line);
        tell(out, findings, all);
        tellLapsed(out, lapsed);
        if (all) tellAssumptions(out, assumptions);
        out.line('');
        out.line(`${summary.stop} stop, ${counted(summary.warn, 'warning')}, ${summary.notChecked} not checked, ${counted(summary.note, 'note')}, ${summary.ok} kept${summary.accepted > 0 ? `, ${summary.accepted} accepted` : ''}`);
        if (!all && assumptions.length > 0) for (const line of wrapped(`${counted(assumptions.length, 'thing')} taken for granted: list them with --all.`, out.width)) out.line(line);
        for (const line of wrapped(CAUTION, out.width)) out.line(line);
      }
      end(summary.stop > 0 ? 1 : 0);
    });
}
