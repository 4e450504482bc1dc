import type { MenuItemConstructorOptions } from 'electron';

/** One entry of the menu: an action of the window by its id, as the window names it. */
interface Entry {
  readonly action: string;
  readonly label: string;
  /** Shown beside it. The window itself hears the key. */
  readonly keys?: string;
}
type Line = Entry | 'line';

/** The actions that a user looks for in a menu; the window has all of them. */
export const MENU: readonly { readonly label: string; readonly lines: readonly Line[] }[] = [
  {
    label: 'Plan',
    lines: [
      { action: 'new', label: 'New plan', keys: 'Alt+N' },
      { action: 'open', label: 'Open plan…', keys: 'CmdOrCtrl+O' },
      { action: 'import', label: 'Import floor plan…', keys: 'CmdOrCtrl+I' },
      { action: 'basis', label: 'Basis of design…', keys: 'CmdOrCtrl+Shift+B' },
      'line',
      { action: 'save', label: 'Save plan', keys: 'CmdOrCtrl+S' },
      { action: 'save-as', label: 'Save plan as…', keys: 'CmdOrCtrl+Shift+S' },
      'line',
      { action: 'print', label: 'Print sheets…', keys: 'CmdOrCtrl+P' },
    ],
  },
  {
    label: 'Edit',
    lines: [
      { action: 'undo', label: 'Undo', keys: 'CmdOrCtrl+Z' },
      { action: 'redo', label: 'Redo', keys: 'CmdOrCtrl+Shift+Z' },
      'line',
      { action: 'cut', label: 'Cut', keys: 'CmdOrCtrl+X' },
      { action: 'copy', label: 'Copy', keys: 'CmdOrCtrl+C' },
      { action: 'paste', label: 'Paste', keys: 'CmdOrCtrl+V' },
      'line',
      { action: 'select-all', label: 'Select everything on this level', keys: 'CmdOrCtrl+A' },
    ],
  },
  {
    label: 'View',
    lines: [
      { action: 'sums', label: 'Sums', keys: 'A' },
      { action: 'fit', label: 'Show the whole level' },
      { action: 'layers', label: 'Layers…' },
      { action: 'section', label: 'Section strip' },
    ],
  },
  {
    label: 'Help',
    lines: [
      { action: 'actions', label: 'Find an action…', keys: 'F2' },
      { action: 'help', label: 'Help', keys: 'F1' },
    ],
  },
];

/**
 * The system's menu. Keys are shown but not caught, so that the window alone decides what a key means
 * where text is being typed.
 * @param choose  told the id of a chosen action
 */
export function menuTemplate(platform: NodeJS.Platform, choose: (action: string) => void): MenuItemConstructorOptions[] {
  const item = (line: Line): MenuItemConstructorOptions =>
    line === 'line' ? { type: 'separator' } : { label: line.label, accelerator: line.keys, registerAccelerator: false, click: () => choose(line.action) };
  const quit: MenuItemConstructorOptions[] = platform === 'darwin' ? [] : [{ type: 'separator' }, { role: 'quit' }];
  const menus = MENU.map(({ label, lines }, index) => ({ label, submenu: [...lines.map(item), ...(index === 0 ? quit : [])] }));
  return platform === 'darwin' ? [{ role: 'appMenu' }, ...menus, { role: 'windowMenu' }] : menus;
}
