import { stat } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { Command, InvalidArgumentError } from 'commander';
import type { ImportReport } from '#shared/host/contract';
import { LARGEST_UNDERLAY_bytes } from '#shared/underlay/drawing';
import { HostProblem, asHostProblem } from '../services/host-problem.ts';
import { readBytes } from '../services/read-bytes.ts';
import { type ConsoleOut, type ExitCode, wrapped } from './console-out.ts';

function readPage(text: string): number {
  const page = Number(text);
  if (!Number.isInteger(page) || page < 1) throw new InvalidArgumentError('A page is a whole number from 1.');
  return page;
}

async function bytesOf(path: string): Promise<Uint8Array> {
  try {
    const about = await stat(path);
    if (about.size > LARGEST_UNDERLAY_bytes) throw new HostProblem('too-large', 'The file is larger than 200 MB.', path, 'Have it exported again with only the level that you need.');
    return await readBytes(path);
  } catch (error) {
    throw asHostProblem(error, path);
  }
}

const figure = (value: number): string => String(Number(value.toPrecision(6)));

function tell(out: ConsoleOut, name: string, page: number, report: ImportReport): void {
  const rows: [string, string][] = [
    ['Kind', `${report.kind}${report.pageCount > 1 ? `, page ${page} of ${report.pageCount}` : ''}`],
    ['Units', report.unitsText],
    ['Extents', `${figure(report.width)} × ${figure(report.height)} file units`],
    ...(report.metresPerUnit === null ? [] : [['', `${figure(report.width * report.metresPerUnit)} × ${figure(report.height * report.metresPerUnit)} m`] satisfies [string, string]]),
    ['Lines', `${report.segments} straight pieces, ${report.closedOutlines} closed outlines`],
    ['Texts', String(report.texts)],
    ['Pictures', String(report.images)],
  ];
  out.line(name);
  for (const [head, value] of rows) out.line(`  ${head.padEnd(10)}${value}`);
  out.line(`  Layers    ${report.layers.length}`);
  for (const { name: layer, visible, segments } of report.layers) out.line(`    ${visible ? ' ' : '–'} ${layer} (${segments})`);
  const doubts = [...(report.unitsDoubt ? [report.unitsDoubt] : []), ...report.warnings];
  for (const doubt of doubts) for (const line of wrapped(`△ ${doubt}`, out.width, '  ')) out.line(line);
}

/** `import FILE`: what the importer sees in a floor plan. */
export function importCommand(out: ConsoleOut, end: (code: ExitCode) => void): Command {
  return new Command('import')
    .description('tell what the importer sees in a floor plan: kind, units, extents, layers, warnings')
    .argument('<file>', 'DXF, PDF, SVG, PNG or JPEG')
    .option('--json', 'print one JSON object')
    .option('--page <page>', 'page of a PDF', readPage, 1)
    .action(async (path: string, { json = false, page }: { json?: boolean; page: number }) => {
      const name = basename(path);
      const bytes = await bytesOf(resolve(path));
      const { startImport } = await import('../services/underlay/import-job.ts');
      const { report } = await startImport(bytes, { name, page }, () => undefined).result.catch((error: unknown) => {
        throw asHostProblem(error, name);
      });
      if (json) out.line(JSON.stringify({ file: resolve(path), page, ...report }, null, 2));
      else tell(out, name, page, report);
      end(0);
    });
}
