import type { Cure } from '../rules/finding.ts';
import { addDirtTrap } from './add-dirt-trap.ts';
import { addDrains } from './add-drains.ts';
import { addPenetration } from './add-penetration.ts';
import { addShutdowns } from './add-shutdowns.ts';
import { addSupport } from './add-support.ts';
import { type Command, command, refuse, sequence } from './command.ts';
import { editNode } from './edit-node.ts';
import { editNozzle } from './edit-nozzle.ts';
import { editSupport } from './edit-support.ts';
import { insertPart } from './insert-part.ts';
import { moveNozzle } from './move-nozzle.ts';
import { placeNode } from './place-node.ts';
import { replaceSupports } from './replace-supports.ts';
import { setPipeHeight } from './set-pipe-height.ts';
import { setSleeve } from './set-sleeve.ts';
import { turnNozzle } from './turn-nozzle.ts';

/** An advice has nothing to carry out. */
const adviceAlone = command('Follow advice', (_draft, text: string) => refuse(`This has to be done by hand: ${text}`));

/** Carries out the cure of a finding in one step. Refuses an advice, which only a person can follow, and a thing that has gone. */
export function applyCure(cure: Cure): Command {
  switch (cure.kind) {
    case 'move-nozzle':
      return moveNozzle({ kind: 'nozzle', ...cure.nozzle }, cure.to);
    case 'turn-nozzle':
      return turnNozzle({ kind: 'nozzle', ...cure.nozzle }, cure.rotation_rad);
    case 'level-nozzle':
      return editNozzle({ kind: 'nozzle', ...cure.nozzle }, { tilt_rad: 0 });
    case 'place-supports':
      return replaceSupports({ kind: 'network', id: cure.network }, cure.places);
    case 'add-supports':
      return sequence('Add pipe support', cure.places.map((at) => addSupport(cure.network, at, 'rigid')));
    case 'make-rigid':
      return sequence('Make pipe support rigid', cure.supports.map((id) => editSupport({ kind: 'support', network: cure.network, id }, { kind: 'rigid' })));
    case 'set-parts':
      return sequence('Change fitting', cure.nodes.map((id) => editNode({ kind: 'node', network: cure.network, id }, { part: cure.part })));
    case 'add-dirt-trap':
      return addDirtTrap({ kind: 'node', network: cure.network, id: cure.node });
    case 'add-drains':
      return addDrains({ kind: 'network', id: cure.network }, cure.turns, cure.ends);
    case 'add-penetration':
      return addPenetration(cure.wall, cure.along_m, cure.middle_m, cure.sleeve_m);
    case 'set-sleeve':
      return setSleeve(cure.opening, cure.sleeve_m);
    case 'move-node':
      return placeNode({ kind: 'node', ...cure.node }, cure.to);
    case 'set-pipe-height':
      return setPipeHeight(cure.pipes.map((pipe) => ({ kind: 'pipe', ...pipe })), cure.z_m);
    case 'insert-part':
      return insertPart({ kind: 'pipe', ...cure.pipe }, cure.at, cure.part);
    case 'add-shutdowns':
      return addShutdowns(cure.enclosure, cure.rows);
    case 'advice':
      return adviceAlone(cure.text);
  }
}
