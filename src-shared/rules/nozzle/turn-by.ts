import { normalAngle_rad } from '../../geometry/angle.ts';
import type { HungNozzle } from '../../derived/derived.ts';
import type { Cure } from '../finding.ts';
import type { Wording } from '../wording.ts';

/** A turn of a nozzle as a cure. */
export const turnBy = ({ nozzle, ref }: HungNozzle, turn_rad: number, say: Pick<Wording, 'turn'>, why = ''): Cure => ({
  kind: 'turn-nozzle',
  text: `Turn it ${say.turn(Math.abs(turn_rad))} ${turn_rad > 0 ? 'counter-clockwise' : 'clockwise'}${why}`,
  nozzle: { network: ref.network, id: ref.id },
  rotation_rad: normalAngle_rad(nozzle.rotation_rad + turn_rad),
});
