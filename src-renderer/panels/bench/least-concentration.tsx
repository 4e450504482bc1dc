import { isSameRef, type Enclosure, type RefOf } from '#shared/model/plan';
import { selectEvaluation } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { useFigures } from './use-plan.ts';

interface LeastConcentrationProps {
  readonly at: RefOf<'enclosure'>;
  readonly enclosure: Enclosure;
  onTake(concentration_pct: number): void;
}

/** The least concentration that the adopted edition asks for what can burn here, a press away. */
export function LeastConcentration({ at, enclosure, onTake }: LeastConcentrationProps) {
  const { quantity } = useFigures();
  const { design } = useStore(selectEvaluation);
  if (enclosure.hazardClass === 'unknown') return 'Say first what can burn: the edition names the least.';
  const minimum = design.enclosures.find(({ ref }) => isSameRef(ref, at))?.minimum;
  if (!minimum) return null;
  if (!minimum.isKnown) return 'The edition names none for this hazard: take it from the listing.';
  const { concentration_pct } = minimum.sums;
  const least = quantity(concentration_pct / 100, 'ratio');
  if (enclosure.concentration_pct === concentration_pct) return 'The least of the adopted edition. The listing may ask for more.';
  return (
    <button type="button" className="link" onClick={() => onTake(concentration_pct)}>
      Take the least of the edition: {least}
    </button>
  );
}
