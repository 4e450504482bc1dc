import type { ClashThing } from '../../derived/clash-contacts.ts';
import type { ClashPipe } from '../../derived/clash-pipe.ts';
import type { Wording } from '../wording.ts';

/** A pipe by its size. */
export const clashPipeName = (pipe: ClashPipe): string => `${pipe.pipe.size} in pipe`;

/** A thing near a pipe in the middle of a sentence. */
export function clashThingName(thing: ClashThing, beside: ClashPipe, say: Wording): string {
  switch (thing.kind) {
    case 'solid':
      return thing.solid.obstruction.name;
    case 'ceiling':
      return `the ${thing.ceiling.enclosure.ceilingVoid ? 'top of the ceiling void' : 'ceiling'} of ${thing.ceiling.enclosure.name}`;
    case 'floor':
      return `the ${thing.floor.enclosure.underFloor ? 'bottom of the void under' : 'floor of'} ${thing.floor.enclosure.name}`;
    case 'wall':
      return `a wall of ${thing.wall.enclosure.name}${thing.wall.isDrawn ? '' : `, taken as ${say.length(thing.wall.thick_m)} thick`}`;
    case 'pipe':
      return `the ${clashPipeName(thing.pipe)} beside it${thing.pipe.ref.network === beside.ref.network ? '' : ` of ${thing.pipe.networkName}`}`;
  }
}
