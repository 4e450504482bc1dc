import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { build } from 'vite';

const root = resolve(import.meta.dirname, '../..');

/** Builds a thread as the program's own build does, that which reads floor plans unless told otherwise, beside the installed libraries, and answers its file. */
export async function buildImportWorker(entry = 'src-main/services/underlay/import-worker.ts'): Promise<{ file: string; remove(): Promise<void> }> {
  const place = join(root, 'out');
  await mkdir(place, { recursive: true });
  const folder = await mkdtemp(join(place, 'test-worker-'));
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: resolve(root, entry),
      outDir: folder,
      emptyOutDir: false,
      minify: false,
      rollupOptions: { output: { format: 'es', entryFileNames: 'import-worker.js' } },
    },
  });
  return { file: join(folder, 'import-worker.js'), remove: () => rm(folder, { recursive: true, force: true }) };
}
