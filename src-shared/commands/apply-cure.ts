import type { Cure } from '../rules/finding.ts';
import { type Command, command, refuse } from './command.ts';
import { editNozzle } from './edit-nozzle.ts';
import { moveNozzle } from './move-nozzle.ts';
import { turnNozzle } from './turn-nozzle.ts';

/** An advice has nothing to carry out. */
const adviceAlone = command('Follow advice', (_draft, text: string) => refuse(`This has to be done by hand: ${text}`));

/** Carries out the cure of a finding. Refuses an advice, which only a person can follow, and a nozzle that has gone. */
export function applyCure(cure: Cure): Command {
  switch (cure.kind) {
    case 'move-nozzle':
      return moveNozzle({ kind: 'nozzle', ...cure.nozzle }, cure.to);
    case 'turn-nozzle':
      return turnNozzle({ kind: 'nozzle', ...cure.nozzle }, cure.rotation_rad);
    case 'level-nozzle':
      return editNozzle({ kind: 'nozzle', ...cure.nozzle }, { tilt_rad: 0 });
    case 'advice':
      return adviceAlone(cure.text);
  }
}
