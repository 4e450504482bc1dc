import { extname, resolve } from 'node:path';
import { Command, Option } from 'commander';
import { type DemoName, DEMO_NAMES, buildDemo } from '../demos/build-demo.ts';
import { HostProblem } from '../services/host-problem.ts';
import { packWithAssets, savePlanFile } from '../services/plan-files.ts';
import { PLAN_ENDING } from '../services/plan-places.ts';
import type { ConsoleOut, ExitCode } from './console-out.ts';

/** `new --demo NAME PLAN`: writes a demo plan. */
export function newCommand(out: ConsoleOut, end: (code: ExitCode) => void): Command {
  return new Command('new')
    .description('write a demo plan')
    .argument('<plan>', 'plan file to write, ending in .nzw')
    .addOption(new Option('--demo <name>', 'which demo').choices(DEMO_NAMES).makeOptionMandatory())
    .option('--replace', 'replace a plan of that name; its present state is kept beside it as .bak')
    .action(async (path: string, { demo, replace = false }: { demo: DemoName; replace?: boolean }) => {
      const place = resolve(path);
      if (extname(place).toLowerCase() !== PLAN_ENDING) throw new HostProblem('refused', 'A plan is saved in a file that ends in .nzw.', place, 'Give it such a name.');
      const { plan, assets } = await buildDemo(demo);
      const { bytes } = await packWithAssets(plan, async (sha256) => assets.find((asset) => asset.sha256 === sha256));
      await savePlanFile(place, bytes, { stamp: null, overwrite: replace });
      out.line(place);
      end(0);
    });
}
