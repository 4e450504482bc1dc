import type { RefOf } from '../model/plan.ts';
import { command } from './command.ts';
import { openingOf } from './lookup.ts';
import { soundSize_m } from './sound-value.ts';

/**
 * Gives a penetration a sleeve; its rating and seal stay as they are.
 * @param sleeve_m  inside of the sleeve [m]; refused when it is nothing
 */
export const setSleeve = command('Change sleeve', (draft, ref: RefOf<'opening'>, sleeve_m: number) => {
  const opening = openingOf(draft, ref);
  opening.crossing = { rating: opening.crossing?.rating ?? '', seal: opening.crossing?.seal ?? '', sleeve_m: soundSize_m('Sleeve', sleeve_m) };
});
