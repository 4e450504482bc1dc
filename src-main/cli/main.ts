import { version } from '../../package.json';
import { runCli } from './run-cli.ts';

/** Wide enough for a sentence, narrow enough to read. */
const WIDEST = 100;

// A pipe that is closed early, as by `head`, is no fault.
process.stdout.on('error', () => process.exit(0));

process.exitCode = await runCli(process.argv.slice(2), version, {
  line: (text) => void process.stdout.write(`${text}\n`),
  aside: (text) => void process.stderr.write(`${text}\n`),
  width: Math.min(process.stdout.columns || WIDEST, WIDEST),
  now: () => new Date(),
});
