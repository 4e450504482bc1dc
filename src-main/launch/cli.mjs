// @ts-check
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { ROOT, ensureBuilt, ensureInstalled, ensureNode } from './ensure.mjs';

ensureNode();
if (!ensureInstalled() || !ensureBuilt()) process.exit(2);
// npm runs this from the checkout; a path is meant from where the user is.
const cwd = process.env.INIT_CWD ?? process.cwd();
const { status } = spawnSync(process.execPath, [join(ROOT, 'out', 'main', 'cli.js'), ...process.argv.slice(2)], { cwd, stdio: 'inherit' });
process.exit(status ?? 2);
