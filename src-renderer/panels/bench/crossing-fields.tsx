import type { Opening } from '#shared/model/plan';
import { LengthField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';

type Crossing = NonNullable<Opening['crossing']>;
const NOTHING: Crossing = { sleeve_m: null, rating: '', seal: '' };

/** The crossing of a penetration with a part of it changed. */
export const crossingWith = (crossing: Opening['crossing'], part: Partial<Crossing>): Crossing => ({ ...NOTHING, ...crossing, ...part });

/** How a penetration is made good around its pipe. */
export function CrossingFields({ crossing, onCommit }: { readonly crossing: Opening['crossing']; onCommit(crossing: Crossing): void }) {
  const { sleeve_m, rating, seal } = crossing ?? NOTHING;
  const change = (part: Partial<Crossing>): void => onCommit(crossingWith(crossing, part));
  return (
    <div className="fields">
      <LengthField label="Inside of the sleeve" value={sleeve_m} least={0} blank={{ text: 'not known', commit: () => change({ sleeve_m: null }) }} onCommit={(inside_m) => change({ sleeve_m: inside_m })} />
      <TextField label="Fire rating of the wall" value={rating} placeholder="1 h, or none" onCommit={(said) => change({ rating: said })} />
      <TextField label="Fire-stop system" value={seal} placeholder="Its listing number" onCommit={(said) => change({ seal: said })} wide help="The system must be listed for this wall, this pipe and this gap." />
    </div>
  );
}
