import { Command, CommanderError } from 'commander';
import { HostProblem, problemOf } from '../services/host-problem.ts';
import { calcCommand, readStandardInput } from './calc.ts';
import { checkCommand } from './check.ts';
import type { ConsoleOut, ExitCode } from './console-out.ts';
import { exportCommand } from './export.ts';
import { fieldCommand } from './field.ts';
import { importCommand } from './import.ts';
import { newCommand } from './new.ts';
import { sheetsCommand } from './sheets.ts';
import { takeoffCommand } from './takeoff.ts';

const isAsking = (error: CommanderError): boolean => error.exitCode === 0;

/** Carries out one command line and answers how it ended. Bad input is one message, never a stack. */
export async function runCli(words: readonly string[], version: string, out: ConsoleOut, readInput: () => Promise<string> = readStandardInput): Promise<ExitCode> {
  let code: ExitCode = 0;
  const end = (ended: ExitCode): void => {
    code = ended;
  };
  const program = new Command('nozzlewright')
    .description('Plan layouts of pre-engineered nitrogen fire-suppression units: check them and print their sheets.')
    .version(version)
    .showSuggestionAfterError();
  for (const command of [checkCommand(out, end), sheetsCommand(out, end), takeoffCommand(out, end), exportCommand(out, end), fieldCommand(out, end), importCommand(out, end), newCommand(out, end), calcCommand(out, end, readInput)]) program.addCommand(command);
  for (const command of [program, ...program.commands.flatMap((each) => [each, ...each.commands])]) {
    command.exitOverride().configureOutput({
      writeOut: (text) => out.line(text.trimEnd()),
      writeErr: (text) => out.aside(text.trimEnd()),
      getOutHelpWidth: () => out.width,
      getErrHelpWidth: () => out.width,
    });
  }
  try {
    await program.parseAsync(['node', 'nozzlewright', ...words]);
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return isAsking(error) ? 0 : 2;
    const { what, where, remedy } = error instanceof HostProblem ? error.problem : problemOf(error, '');
    out.aside([what, where && `(${where})`, remedy].filter(Boolean).join(' '));
    return 2;
  }
}
