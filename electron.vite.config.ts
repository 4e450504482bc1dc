import { resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'electron-vite';

const here = import.meta.dirname;

export default defineConfig({
  main: {
    build: {
      outDir: 'out/main',
      rollupOptions: {
        input: {
          electron: resolve(here, 'src-main/electron/main.ts'),
          loopback: resolve(here, 'src-main/loopback/main.ts'),
          cli: resolve(here, 'src-main/cli/main.ts'),
          'import-worker': resolve(here, 'src-main/services/underlay/import-worker.ts'),
          'field-worker': resolve(here, 'src-main/services/field/field-worker.ts'),
          'print-worker': resolve(here, 'src-main/services/print-worker.ts'),
        },
        output: { format: 'es' },
      },
    },
  },
  preload: {
    build: {
      outDir: 'out/preload',
      rollupOptions: {
        input: { preload: resolve(here, 'src-main/electron/preload.ts') },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: 'src-renderer',
    base: './',
    plugins: [react()],
    worker: { format: 'es' },
    build: {
      outDir: 'out/renderer',
      minify: true,
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      rollupOptions: { input: { index: resolve(here, 'src-renderer/index.html') } },
    },
  },
});
