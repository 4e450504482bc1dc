import { join } from 'node:path';
import type { Dialogs } from '../services/make-host.ts';
import type { ElectronParts } from './electron-parts.ts';

const PLAN_FILTER = { name: 'Nozzlewright plan', extensions: ['nzw'] };
const BARE_FILTER = { name: 'Bare plan', extensions: ['json'] };
const SHEETS_FILTER = { name: 'Sheets with the plan in them', extensions: ['pdf'] };

/** The system's own dialogs. */
export function makeDialogs({ dialog, shell }: Pick<ElectronParts, 'dialog' | 'shell'>, plansFolder: string): Dialogs {
  const place = async (title: string, name: string, filters: { name: string; extensions: string[] }[]): Promise<string | null> => {
    const { canceled, filePath } = await dialog.showSaveDialog({ title, defaultPath: join(plansFolder, name), filters });
    return canceled || !filePath ? null : filePath;
  };
  return {
    async pickPlan() {
      const { canceled, filePaths } = await dialog.showOpenDialog({
        title: 'Open plan',
        defaultPath: plansFolder,
        filters: [{ name: 'Plans', extensions: [...PLAN_FILTER.extensions, ...BARE_FILTER.extensions, ...SHEETS_FILTER.extensions] }],
        properties: ['openFile'],
      });
      return canceled ? null : (filePaths[0] ?? null);
    },
    pickPlanPlace: (name) => place('Save plan', name, [PLAN_FILTER, BARE_FILTER]),
    pickFilePlace: (name) => place('Save file', name, [{ name: 'Files', extensions: [name.slice(name.lastIndexOf('.') + 1)] }]),
    open: (path) => shell.openPath(path),
  };
}
