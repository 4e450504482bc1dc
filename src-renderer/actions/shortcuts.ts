import type { Action } from './action.ts';

/** What of a key press decides a shortcut. */
export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

const NAMED: Readonly<Record<string, string>> = { ' ': 'Space', ArrowUp: 'Up', ArrowDown: 'Down', ArrowLeft: 'Left', ArrowRight: 'Right', '=': '+' };

/** Keys that need Shift on some keyboards: Shift does not tell them apart. */
const isSign = (key: string): boolean => key.length === 1 && key.toLowerCase() === key.toUpperCase();

/**
 * A key press as shortcuts are written.
 * @example shortcutOf({ key: 's', ctrlKey: true, shiftKey: true, … }) // 'Mod+Shift+S'
 */
export function shortcutOf({ key, ctrlKey, metaKey, shiftKey, altKey }: KeyPress): string {
  const name = NAMED[key] ?? (key.length === 1 ? key.toUpperCase() : key);
  return [ctrlKey || metaKey ? 'Mod' : '', altKey ? 'Alt' : '', shiftKey && !isSign(key) ? 'Shift' : '', name].filter(Boolean).join('+');
}

/** The action that a key press asks for, or undefined. */
export const findByKey = (actions: readonly Action[], press: KeyPress): Action | undefined => {
  const shortcut = shortcutOf(press);
  return actions.find((action) => action.keys?.includes(shortcut));
};

/** Whether a shortcut works while text is being typed into a field: only those that type nothing there. */
export const worksInFields = (press: KeyPress): boolean => {
  const editing = ['A', 'C', 'V', 'X', 'Z', 'Y'];
  if (/^F\d+$/.test(press.key)) return true;
  return (press.ctrlKey || press.metaKey) && !editing.includes(press.key.toUpperCase()) && press.key.length === 1;
};

/** A shortcut as the user's keyboard has it: "Ctrl+Shift+S". */
export const shortcutText = (keys: string, isMac: boolean): string => keys.replace('Mod', isMac ? '⌘' : 'Ctrl').replace('Alt', isMac ? 'Option' : 'Alt');
