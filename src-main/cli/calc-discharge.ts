import { resolve } from 'node:path';
import { Command } from 'commander';
import { dischargeAnswer } from '#shared/calculations/design/discharge-answer';
import { dischargeBases } from '#shared/calculations/discharge/discharge-bases';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { evaluate } from '#shared/evaluate';
import { HostProblem } from '../services/host-problem.ts';
import { readPlanFile, readPlanText } from '../services/plan-files.ts';
import { type ConsoleOut, type ExitCode, wrapped } from './console-out.ts';

export const DISCHARGE_TITLE = 'Transient discharge of every network of a plan';

const OUTPUTS: Readonly<Record<string, string>> = {
  timeTo95_s: 'until the slowest space has 95 % of its design concentration; null when one never has',
  peakFlow_kg_s: 'greatest flow of the busiest network',
  enclosurePeakPressure_Pa: 'greatest pressure of an enclosure over outdoors',
  'nozzles []': 'network, name, mass_kg, peakFlow_kg_s, peakPressure_Pa (absolute), isChoked',
  'nodes []': 'network, node, peakPressure_Pa (absolute)',
  'networks []': 'the same network by network, with its spaces, the least temperatures and the greatest pipe pressure',
};

/** What `calc discharge` takes and gives. */
export const dischargeHelp = (width: number): string =>
  [
    '',
    'In: a plan, as the path of a plan file (.nzw or plan.json), or its plan.json on standard input',
    '',
    'Out: one JSON object',
    ...Object.entries(OUTPUTS).flatMap(([key, what]) => wrapped(`${key}: ${what}`, width, '  ')),
    '',
    'Basis',
    ...dischargeBases.flatMap(({ formula, source, caution }) => [...wrapped(formula, width, '  '), ...wrapped(`Source: ${source}`, width, '    '), ...(caution ? wrapped(`Caution: ${caution}`, width, '    ') : [])]),
    '',
    ...wrapped("Preliminary. The unit's own manual, its listing, the adopted code and licensed practice decide.", width),
  ].join('\n');

/** `calc discharge [PLAN]`: a plan in, a JSON object out. */
export function dischargeCommand(out: ConsoleOut, end: (code: ExitCode) => void, readInput: () => Promise<string>): Command {
  return new Command('discharge')
    .description(DISCHARGE_TITLE)
    .argument('[plan]', 'plan file (.nzw), bare plan.json, or sheets printed of it (.pdf); standard input when missing')
    .addHelpText('after', () => dischargeHelp(out.width))
    .action(async (path: string | undefined) => {
      const { plan } = path === undefined ? readPlanText(await readInput(), 'standard input') : await readPlanFile(resolve(path));
      const answer = dischargeAnswer(evaluate(plan, workedDischarge()).design);
      if (typeof answer === 'string') throw new HostProblem('refused', answer, '', 'Complete the plan; its findings say where.');
      out.line(JSON.stringify(answer));
      end(0);
    });
}
